'use client';

import { useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { ColumnChoice } from '#lib/services/list-column-choices.ts';
import type { LinesView } from '#lib/services/list-lines.ts';
import { ScheduleRow, widthOf } from './schedule-row.client.tsx';
import styles from './schedule-table.module.css';
import { ScheduleTools } from './schedule-tools.client.tsx';
import type { SheetPlace } from './sheet-cell.client.tsx';
import { splitBlock } from './split-block.ts';
import { type Schedule, useSchedule } from './use-schedule.client.tsx';

interface ScheduleTableProps {
  readonly enquiryId: number;
  readonly first: LinesView;
  readonly columns: readonly ColumnChoice[];
}

/** Columns shown at first, so that the duty stands beside them; the others can be added. */
const USUAL = ['tag', 'qty', 'valve_type', 'size', 'driven_by'];
const ROW_HEIGHT = 34;
const HEAD_HEIGHT = 34;

export function ScheduleTable({ enquiryId, first, columns }: ScheduleTableProps) {
  const schedule = useSchedule({ enquiryId, first });
  const [shown, setShown] = useState<readonly string[]>(USUAL);
  const [chosen, setChosen] = useState<ReadonlySet<number>>(new Set());
  const spec = shown.flatMap((name) => columns.filter((column) => column.name === name));

  function onKeyDown(event: KeyboardEvent<HTMLElement>): void {
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || (key !== 'z' && key !== 'y')) return;
    if (event.target instanceof HTMLInputElement && event.target.dataset.dirty === 'yes') return;
    if (event.target instanceof HTMLInputElement && event.target.type === 'search') return;
    event.preventDefault();
    if (event.shiftKey || key === 'y') schedule.redo();
    else schedule.undo();
  }

  function show(what: string): void {
    if (what === 'usual') setShown(USUAL);
    else if (what === 'filled') setShown([...USUAL, ...filledColumns(schedule, columns)]);
    else if (what !== '') setShown([...shown, what]);
  }

  function choose(lineId: number): void {
    setChosen((before) => {
      const next = new Set(before);
      if (!next.delete(lineId)) next.add(lineId);
      return next;
    });
  }

  const [newest, setNewest] = useState<number>();
  return (
    <section onKeyDown={onKeyDown} aria-label="Schedule">
      <ScheduleTools
        schedule={schedule}
        hidden={columns.filter(({ name }) => !shown.includes(name))}
        chosen={chosen}
        onShow={show}
        onAdd={() => void schedule.addLine().then((total) => setNewest(total - 1))}
        onRemove={() => {
          schedule.remove([...chosen]);
          setChosen(new Set());
        }}
      />
      {schedule.trouble !== '' && (
        <p className="notice refusal" role="alert">
          {schedule.trouble}
        </p>
      )}
      {schedule.told !== '' && (
        <p className="notice" role="status">
          {schedule.told}
        </p>
      )}
      {schedule.total === 0 ? (
        <p className="empty">
          {schedule.filter.text === '' && !schedule.filter.problems
            ? 'No line yet: take in a list under “List”, or add a line.'
            : 'No line matches.'}
        </p>
      ) : (
        <Sheet {...{ enquiryId, schedule, spec, chosen, newest }} onChoose={choose} />
      )}
    </section>
  );
}

interface SheetProps {
  readonly enquiryId: number;
  readonly schedule: Schedule;
  readonly spec: readonly ColumnChoice[];
  readonly chosen: ReadonlySet<number>;
  /** Place of a line that was just added. */
  readonly newest: number | undefined;
  readonly onChoose: (lineId: number) => void;
}

function Sheet({ enquiryId, schedule, spec, chosen, newest, onChoose }: SheetProps) {
  const frame = useRef<HTMLDivElement>(null);
  const wanted = useRef<SheetPlace>(undefined);
  const rows = useVirtualizer({
    count: schedule.total,
    getScrollElement: () => frame.current,
    estimateSize: () => ROW_HEIGHT,
    overscan: 12,
    initialRect: { width: 1000, height: 600 },
    scrollPaddingStart: HEAD_HEIGHT,
    scrollPaddingEnd: HEAD_HEIGHT,
  });
  const visible = rows.getVirtualItems();
  const from = visible[0]?.index ?? 0;
  const to = visible.at(-1)?.index ?? 0;
  const { need } = schedule;
  useEffect(() => need(from, to), [need, from, to]);

  function focusWanted(): void {
    if (!wanted.current) return;
    const { row, column } = wanted.current;
    const cell = frame.current?.querySelector<HTMLInputElement>(`input[data-row="${row}"][data-column="${column}"]`);
    if (!cell) return;
    wanted.current = undefined;
    cell.focus();
  }

  function go(place: SheetPlace): void {
    if (place.row < 0 || place.row >= schedule.total || place.column < 0 || place.column >= spec.length) {
      if (document.activeElement instanceof HTMLInputElement) leaveAndStay(document.activeElement);
      return;
    }
    wanted.current = place;
    rows.scrollToIndex(place.row);
    focusWanted();
  }

  // A row that was out of sight is there only after it has been drawn.
  useEffect(focusWanted);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a new line calls for the jump.
  useEffect(() => {
    if (newest !== undefined) go({ row: newest, column: 0 });
  }, [newest]);

  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard.
    <div className={styles.frame} ref={frame} tabIndex={0} role="region" aria-label="Lines of the schedule">
      <div role="table" aria-rowcount={schedule.total + 1} aria-label="Valves and their duty" className={styles.grid}>
        <Head spec={spec} />
        <div role="rowgroup" style={{ height: rows.getTotalSize(), position: 'relative' }}>
          {visible.map((item) => {
            const line = schedule.at(item.index);
            return (
              <ScheduleRow
                key={line?.id ?? `place ${item.index}`}
                enquiryId={enquiryId}
                index={item.index}
                top={item.start}
                line={line}
                columns={spec}
                isChosen={line !== undefined && chosen.has(line.id)}
                onEdit={schedule.edit}
                onMove={go}
                onChoose={onChoose}
                onBlock={(text, place) =>
                  schedule.paste({
                    index: place.row,
                    columns: spec.slice(place.column).map(({ name }) => name),
                    rows: splitBlock(text),
                  })
                }
              />
            );
          })}
        </div>
      </div>
    </div>
  );
}

/** At the edge of the table the text is saved and the cell stays where it is. */
function leaveAndStay(cell: HTMLInputElement): void {
  cell.blur();
  cell.focus();
}

function Head({ spec }: { readonly spec: readonly ColumnChoice[] }) {
  return (
    <div role="row" className={styles.head}>
      <div role="columnheader" className={`${styles.cell} ${styles.pick}`}>
        <span className={styles.unseen}>Chosen</span>
      </div>
      {spec.map(({ name, label }) => (
        <div role="columnheader" key={name} className={`${styles.cell} ${widthOf(name)}`}>
          {name === 'qty' ? 'Qty' : label}
        </div>
      ))}
      {['To start', 'To run', 'Turns', 'Never above'].map((label) => (
        <div role="columnheader" key={label} className={`${styles.cell} ${styles.duty}`}>
          {label}
        </div>
      ))}
      <div role="columnheader" className={`${styles.cell} ${styles.settle}`}>
        To settle
      </div>
    </div>
  );
}

/** Columns beyond the usual ones that some loaded line says something in. */
function filledColumns(schedule: Schedule, columns: readonly ColumnChoice[]): readonly string[] {
  const filled = new Set<string>();
  for (let index = 0; index < schedule.total; index += 1) {
    for (const name of Object.keys(schedule.at(index)?.cells ?? {})) filled.add(name);
  }
  return columns.map(({ name }): string => name).filter((name) => filled.has(name) && !USUAL.includes(name));
}
