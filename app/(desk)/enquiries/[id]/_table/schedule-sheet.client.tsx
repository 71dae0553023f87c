'use client';

import { defaultRangeExtractor, useVirtualizer } from '@tanstack/react-virtual';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import type { Place } from './block.ts';
import { spanOf } from './block.ts';
import { ColumnHeads } from './column-heads.client.tsx';
import type { GridColumn } from './grid-columns.ts';
import { ScheduleRow } from './schedule-row.client.tsx';
import styles from './schedule-table.module.css';
import type { Chosen, Panel } from './tools-props.ts';
import { type BlockWalk, useBlock } from './use-block.client.tsx';
import type { Schedule } from './use-schedule.client.tsx';
import { useSheetKeys } from './use-sheet-keys.client.tsx';

const ROW_HEIGHT = 34;
const HEAD_HEIGHT = 34;

interface SheetProps {
  readonly schedule: Schedule;
  readonly columns: readonly GridColumn[];
  readonly chosen: Chosen;
  readonly onHide: (column: string) => void;
  readonly onPanel: (panel: Panel) => void;
  /** Lets the tools know where the block is and lead the walk. */
  readonly onWalk: (walk: BlockWalk) => void;
}

/** The lines that can be seen, in a frame of their own; only they, and the one with the focus, are drawn. */
export function ScheduleSheet({ schedule, columns, chosen, onHide, onPanel, onWalk }: SheetProps) {
  const { lines, saving, foreign } = schedule;
  const focus = useRef(0);
  const { frame, rows, visible, page } = useVisibleRows(schedule, focus);
  const size: Place = { row: lines.order.length, column: columns.length };
  const walk = useBlock({ frame, size, newest: schedule.newest, onFar: rows.scrollToIndex });
  focus.current = walk.block.anchor.row;
  const keys = useSheetKeys({ schedule, columns, walk, size, page, chosen, onPanel });
  useEffect(() => onWalk(walk));

  const latest = useRef({ schedule, chosen });
  latest.current = { schedule, chosen };
  const verbs = useMemo(
    () => ({
      write: (edits: Parameters<Schedule['write']>[0]) => latest.current.schedule.write(edits),
      choose: (id: number) => latest.current.chosen.toggle([id]),
    }),
    [],
  );
  const span = spanOf(walk.block);
  const many = chosen.ids.size;
  return (
    <section className={styles.frame} ref={frame} aria-label="Lines of the schedule" {...keys}>
      <div
        role="grid"
        aria-rowcount={size.row + 1}
        aria-colcount={columns.length + 2}
        aria-multiselectable="true"
        aria-label="Valves and their duty"
        className={styles.grid}
      >
        <ColumnHeads
          {...{ columns, filter: lines.filter, onHide }}
          chosen={many === 0 ? 'none' : many >= size.row ? 'all' : 'some'}
          onShow={(filter) => void lines.show(filter)}
          onChooseAll={() =>
            chosen.toggle(many >= size.row ? [...chosen.ids] : lines.order.filter((id) => !chosen.ids.has(id)))
          }
        />
        <div role="rowgroup" style={{ height: rows.getTotalSize(), position: 'relative' }}>
          {visible.map(({ index, start }) => {
            const id = lines.order[index] ?? 0;
            const isIn = index >= span.top && index <= span.bottom;
            return (
              <ScheduleRow
                key={id}
                {...{ enquiryId: schedule.enquiryId, index, top: start, columns, verbs }}
                line={lines.line(id)}
                isChosen={chosen.ids.has(id)}
                left={isIn ? span.left : -1}
                right={isIn ? span.right : -1}
                stop={index === walk.block.anchor.row ? walk.block.anchor.column : -1}
                unsaved={saving.unsaved.get(id)}
                foreign={foreign.get(id)}
              />
            );
          })}
        </div>
      </div>
    </section>
  );
}

/** Which rows are in the frame; their lines are asked for as they come into sight. */
function useVisibleRows({ lines }: Schedule, focus: RefObject<number>) {
  const { need } = lines;
  const frame = useRef<HTMLElement>(null);
  const rows = useVirtualizer({
    count: lines.order.length,
    getScrollElement: () => frame.current,
    estimateSize: () => ROW_HEIGHT,
    overscan: 8,
    initialRect: { width: 1000, height: 600 },
    scrollPaddingStart: HEAD_HEIGHT,
    scrollPaddingEnd: HEAD_HEIGHT,
    // The row with the focus stays drawn, so that keys still reach it when it is scrolled away.
    rangeExtractor: (range) => {
      const shown = defaultRangeExtractor(range);
      const isAway = !shown.includes(focus.current) && focus.current < range.count;
      const isFocused = frame.current?.contains(document.activeElement) === true;
      return isAway && isFocused ? [...shown, focus.current].toSorted((a, b) => a - b) : shown;
    },
  });
  const visible = rows.getVirtualItems();
  const from = visible[0]?.index ?? 0;
  const to = visible.at(-1)?.index ?? 0;
  // biome-ignore lint/correctness/useExhaustiveDependencies: which rows are drawn follows from the first, the last and the count.
  useEffect(() => need(visible.map(({ index }) => index)), [need, from, to, visible.length]);
  const page = Math.max(1, Math.floor(((frame.current?.clientHeight ?? 600) - HEAD_HEIGHT) / ROW_HEIGHT) - 1);
  return { frame, rows, visible, page };
}
