'use client';

import { type KeyboardEvent, useState } from 'react';
import type { ColumnChoice } from '#lib/services/list-column-choices.ts';
import type { LinesView } from '#lib/services/list-lines.ts';
import { ScheduleSheet } from './schedule-sheet.client.tsx';
import styles from './schedule-table.module.css';
import { ScheduleTools } from './schedule-tools.client.tsx';
import { type Schedule, useSchedule } from './use-schedule.client.tsx';

interface ScheduleTableProps {
  readonly enquiryId: number;
  readonly first: LinesView;
  readonly columns: readonly ColumnChoice[];
}

/** Columns shown at first, so that the duty stands beside them; the others can be added. */
const USUAL = ['tag', 'qty', 'valve_type', 'size', 'driven_by'];

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
        enquiryId={enquiryId}
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
        <>
          <p className={styles.paper}>All lines print from “To print” beside the schedule’s buttons.</p>
          <ScheduleSheet {...{ enquiryId, schedule, spec, chosen, newest }} onChoose={choose} />
        </>
      )}
    </section>
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
