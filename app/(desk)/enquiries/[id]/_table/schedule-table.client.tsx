'use client';

import { type KeyboardEvent, useRef, useState } from 'react';
import { showsAll } from '#lib/schedule/line-filter.ts';
import type { ColumnChoice } from '#lib/services/schedule/list-column-choices.ts';
import { FilterChips } from './filter-chips.client.tsx';
import { gridColumns } from './grid-columns.ts';
import { SaveNotices } from './save-notices.client.tsx';
import { ScheduleSheet } from './schedule-sheet.client.tsx';
import styles from './schedule-table.module.css';
import { ScheduleTools } from './schedule-tools.client.tsx';
import { ToolPanel } from './tool-panel.client.tsx';
import type { Panel } from './tools-props.ts';
import type { BlockWalk } from './use-block.client.tsx';
import type { FirstLines } from './use-lines.client.tsx';
import { useSchedule } from './use-schedule.client.tsx';
import { useShownColumns } from './use-shown-columns.client.tsx';

interface ScheduleTableProps {
  readonly enquiryId: number;
  readonly first: FirstLines;
  readonly columns: readonly ColumnChoice[];
}

const NO_WALK: BlockWalk = {
  block: { anchor: { row: 0, column: 0 }, head: { row: 0, column: 0 } },
  go: () => undefined,
  reach: () => undefined,
  focused: () => undefined,
};

/** The schedule as a table to work in: its tools, what is to be told, and the lines. */
export function ScheduleTable({ enquiryId, first, columns: choices }: ScheduleTableProps) {
  const schedule = useSchedule({ enquiryId, first });
  const shown = useShownColumns();
  const [ids, setIds] = useState<ReadonlySet<number>>(new Set());
  const [panel, setPanel] = useState<Panel>();
  const walk = useRef(NO_WALK);
  const columns = gridColumns(choices, shown.names);

  function toggle(more: readonly number[]): void {
    setIds((before) => {
      const next = new Set(before);
      for (const id of more) if (!next.delete(id)) next.add(id);
      return next;
    });
  }

  function onKeyDown(event: KeyboardEvent<HTMLElement>): void {
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || (key !== 'z' && key !== 'y')) return;
    const { target } = event;
    // A text that is being typed has an undo of its own.
    if (target instanceof HTMLInputElement && (target.dataset.dirty === 'yes' || target.dataset.row === undefined))
      return;
    event.preventDefault();
    if (event.shiftKey || key === 'y') schedule.redo();
    else schedule.undo();
  }

  const tools = { schedule, columns, choices, shown, walk, chosen: ids, panel, onPanel: setPanel };
  const { filter } = schedule.lines;
  return (
    <section onKeyDown={onKeyDown} aria-label="Schedule">
      <ScheduleTools {...tools} onChosen={setIds} />
      {panel && <ToolPanel {...tools} panel={panel} />}
      <FilterChips filter={filter} choices={choices} onShow={(next) => void schedule.lines.show(next)} />
      <SaveNotices schedule={schedule} choices={choices} />
      {schedule.lines.order.length === 0 ? (
        <p className="empty">
          {showsAll(filter)
            ? 'No line yet: take in a list under “List”, or add a line.'
            : 'No line matches: drop a filter to see more.'}
        </p>
      ) : (
        <>
          <p className={styles.paper}>All lines print from “To print” beside the schedule’s buttons.</p>
          <ScheduleSheet
            {...{ schedule, columns }}
            chosen={{ ids, toggle }}
            onHide={shown.hide}
            onPanel={setPanel}
            onWalk={(next) => {
              walk.current = next;
            }}
          />
        </>
      )}
    </section>
  );
}
