import type { RefObject } from 'react';
import type { ColumnChoice } from '#lib/services/schedule/list-column-choices.ts';
import { spanOf } from './block.ts';
import type { GridColumn } from './grid-columns.ts';
import type { BlockWalk } from './use-block.client.tsx';
import type { Schedule } from './use-schedule.client.tsx';
import type { ShownColumns } from './use-shown-columns.client.tsx';

export type Panel = 'replace' | 'set' | 'columns' | 'go' | 'changes';

export interface Chosen {
  readonly ids: ReadonlySet<number>;
  readonly toggle: (ids: readonly number[]) => void;
}

export interface ToolsProps {
  readonly schedule: Schedule;
  readonly columns: readonly GridColumn[];
  readonly walk: RefObject<BlockWalk>;
  readonly chosen: ReadonlySet<number>;
  readonly panel: Panel | undefined;
  readonly onPanel: (panel: Panel | undefined) => void;
}

export interface PanelProps extends ToolsProps {
  readonly choices: readonly ColumnChoice[];
  readonly shown: ShownColumns;
}

/** The lines that a tool works on: those chosen, or those of the block. */
export function linesMeant({
  schedule,
  walk,
  chosen,
}: Pick<ToolsProps, 'schedule' | 'walk' | 'chosen'>): readonly number[] {
  const { order } = schedule.lines;
  if (chosen.size > 0) return order.filter((id) => chosen.has(id));
  const { top, bottom } = spanOf(walk.current.block);
  return order.slice(top, bottom + 1);
}
