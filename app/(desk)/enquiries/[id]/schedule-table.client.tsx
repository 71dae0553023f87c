'use client';

import { useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { ColumnChoice } from '#lib/services/list-column-choices.ts';
import type { LinesView } from '#lib/services/list-lines.ts';
import { ScheduleRow } from './schedule-row.client.tsx';
import styles from './schedule-table.module.css';
import { useSchedule } from './use-schedule.client.tsx';

interface ScheduleTableProps {
  readonly enquiryId: number;
  readonly first: LinesView;
  readonly columns: readonly ColumnChoice[];
}

/** Columns shown at first; the others can be added one by one. */
const USUAL = ['tag', 'qty', 'valve_type', 'size', 'driven_by', 'wheel_diameter', 'turns', 'notes'];
const ROW_HEIGHT = 34;

export function ScheduleTable({ enquiryId, first, columns }: ScheduleTableProps) {
  const schedule = useSchedule({ enquiryId, first });
  const [shown, setShown] = useState<readonly string[]>(USUAL);
  const [chosen, setChosen] = useState<number>();
  const frame = useRef<HTMLDivElement>(null);
  const rows = useVirtualizer({
    count: schedule.total,
    getScrollElement: () => frame.current,
    estimateSize: () => ROW_HEIGHT,
    overscan: 12,
    initialRect: { width: 1000, height: 600 },
  });
  const visible = rows.getVirtualItems();
  const from = visible[0]?.index ?? 0;
  const to = visible.at(-1)?.index ?? 0;
  const { need } = schedule;
  useEffect(() => need(from, to), [need, from, to]);

  function onKeyDown(event: KeyboardEvent<HTMLElement>): void {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
    if (event.target instanceof HTMLInputElement && event.target.dataset.dirty === 'yes') return;
    event.preventDefault();
    if (event.shiftKey) schedule.redo();
    else schedule.undo();
  }

  const spec = shown.flatMap((name) => columns.filter((column) => column.name === name));
  return (
    <section onKeyDown={onKeyDown} aria-label="Schedule">
      <div className="tools">
        <div>
          <label htmlFor="find">Find in the schedule</label>
          <input
            id="find"
            type="search"
            value={schedule.filter.text}
            onChange={(event) => schedule.refilter({ ...schedule.filter, text: event.target.value })}
          />
        </div>
        <label className={styles.check}>
          <input
            type="checkbox"
            checked={schedule.filter.problems}
            onChange={(event) => schedule.refilter({ ...schedule.filter, problems: event.target.checked })}
          />{' '}
          only lines with problems
        </label>
        <div>
          <label htmlFor="more">Show a column</label>
          <select id="more" value="" onChange={(event) => setShown([...shown, event.target.value])}>
            <option value="">choose…</option>
            {columns
              .filter(({ name }) => !shown.includes(name))
              .map(({ name, label }) => (
                <option key={name} value={name}>
                  {label}
                </option>
              ))}
          </select>
        </div>
        <button type="button" disabled={!schedule.canUndo} onClick={schedule.undo}>
          Undo
        </button>
        <button type="button" disabled={!schedule.canRedo} onClick={schedule.redo}>
          Redo
        </button>
        <button type="button" onClick={() => schedule.add([{}])}>
          Add a line
        </button>
        <button
          type="button"
          disabled={chosen === undefined}
          onClick={() => chosen !== undefined && schedule.remove([chosen])}
        >
          Remove the line
        </button>
        <small aria-live="polite">
          {schedule.total} lines{schedule.saving ? ', saving…' : ', saved'}
        </small>
      </div>
      {schedule.trouble !== '' && (
        <p className="notice refusal" role="alert">
          {schedule.trouble}
        </p>
      )}
      {schedule.total === 0 ? (
        <p className="empty">
          {schedule.filter.text === '' && !schedule.filter.problems
            ? 'No line yet: take in a list under “List”, or add a line.'
            : 'No line matches.'}
        </p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard.
        <div className={styles.frame} ref={frame} tabIndex={0} role="region" aria-label="Lines of the schedule">
          <div
            role="table"
            aria-rowcount={schedule.total + 1}
            aria-label="Valves and their duty"
            className={styles.grid}
          >
            <div role="row" className={styles.head}>
              {[...spec.map(({ name, label }) => ({ name, label })), ...DUTY].map(({ name, label }) => (
                <div
                  role="columnheader"
                  key={name}
                  className={
                    columns.some((column) => column.name === name) ? styles.cell : `${styles.cell} ${styles.duty}`
                  }
                >
                  {label}
                </div>
              ))}
            </div>
            <div role="rowgroup" style={{ height: rows.getTotalSize(), position: 'relative' }}>
              {visible.map((item) => (
                <ScheduleRow
                  key={item.key}
                  enquiryId={enquiryId}
                  index={item.index}
                  top={item.start}
                  line={schedule.at(item.index)}
                  columns={spec}
                  onEdit={schedule.edit}
                  onChoose={setChosen}
                  isChosen={schedule.at(item.index)?.id === chosen}
                />
              ))}
            </div>
          </div>
        </div>
      )}
    </section>
  );
}

const DUTY = [
  { name: 'starting', label: 'To start' },
  { name: 'running', label: 'To run' },
  { name: 'turnsOut', label: 'Turns' },
  { name: 'never', label: 'Never above' },
  { name: 'trouble', label: 'To settle' },
] as const;
