'use client';

import Link from 'next/link';
import type { ColumnChoice } from '#lib/services/list-column-choices.ts';
import styles from './schedule-table.module.css';
import type { Schedule } from './use-schedule.client.tsx';

interface ScheduleToolsProps {
  readonly enquiryId: number;
  readonly schedule: Schedule;
  readonly hidden: readonly ColumnChoice[];
  readonly chosen: ReadonlySet<number>;
  /** A column by its name, `filled` for all that hold something, `usual` for the first few. */
  readonly onShow: (what: string) => void;
  readonly onAdd: () => void;
  readonly onRemove: () => void;
}

/** What is done to the schedule as a whole. */
export function ScheduleTools({ enquiryId, schedule, hidden, chosen, onShow, onAdd, onRemove }: ScheduleToolsProps) {
  const { filter } = schedule;
  const state = schedule.saving ? 'saving…' : schedule.trouble === '' ? 'saved' : 'not saved';
  return (
    <div className="tools">
      <div>
        <label htmlFor="find">Find in the schedule</label>
        <input
          id="find"
          type="search"
          value={filter.text}
          onChange={(event) => void schedule.reload({ ...filter, text: event.target.value })}
        />
      </div>
      <label className={styles.check}>
        <input
          type="checkbox"
          checked={filter.problems}
          onChange={(event) => void schedule.reload({ ...filter, problems: event.target.checked })}
        />{' '}
        only lines with problems
      </label>
      <div>
        <label htmlFor="more">Show a column</label>
        <select id="more" value="" onChange={(event) => onShow(event.target.value)}>
          <option value="">choose…</option>
          <option value="filled">all that hold something</option>
          <option value="usual">only the usual ones</option>
          {hidden.map(({ name, label }) => (
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
      <button type="button" onClick={onAdd}>
        Add a line
      </button>
      <button type="button" disabled={chosen.size === 0} onClick={onRemove}>
        {chosen.size < 2 ? 'Remove the line' : `Remove ${chosen.size} lines`}
      </button>
      <Link href={`/enquiries/${enquiryId}/schedule`}>To print</Link>
      <small aria-live="polite">
        {schedule.total} lines, {state}
      </small>
    </div>
  );
}
