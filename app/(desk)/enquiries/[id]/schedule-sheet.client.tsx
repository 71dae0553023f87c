'use client';

import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useRef } from 'react';
import type { ColumnChoice } from '#lib/services/list-column-choices.ts';
import { ScheduleRow, widthOf } from './schedule-row.client.tsx';
import styles from './schedule-table.module.css';
import type { SheetPlace } from './sheet-cell.client.tsx';
import { splitBlock } from './split-block.ts';
import { useCellWalk } from './use-cell-walk.client.tsx';
import type { Schedule } from './use-schedule.client.tsx';

const ROW_HEIGHT = 34;
const HEAD_HEIGHT = 34;

interface SheetProps {
  readonly enquiryId: number;
  readonly schedule: Schedule;
  readonly spec: readonly ColumnChoice[];
  readonly chosen: ReadonlySet<number>;
  /** Place of a line that was just added. */
  readonly newest: number | undefined;
  readonly onChoose: (lineId: number) => void;
}

/** The lines that can be seen, in a frame of their own; only they are drawn. */
export function ScheduleSheet({ enquiryId, schedule, spec, chosen, newest, onChoose }: SheetProps) {
  const { frame, rows, visible } = useVisibleRows(schedule);
  const go = useCellWalk({
    frame,
    size: { row: schedule.total, column: spec.length },
    newest,
    onFar: rows.scrollToIndex,
  });

  function pasteAt(text: string, place: SheetPlace): void {
    const columns = spec.slice(place.column).map(({ name }) => name);
    schedule.paste({ index: place.row, columns, rows: splitBlock(text) });
  }

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
                onBlock={pasteAt}
              />
            );
          })}
        </div>
      </div>
    </div>
  );
}

/** Which rows are in the frame; their lines are asked for as they come into sight. */
function useVisibleRows({ total, need }: Schedule) {
  const frame = useRef<HTMLDivElement>(null);
  const rows = useVirtualizer({
    count: total,
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
  useEffect(() => need(from, to), [need, from, to]);
  return { frame, rows, visible };
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
