/*
 * What one change of a schedule did, cell by cell and line by line, and what takes it back.
 * Invariant: the way back holds what the change found and what it left, so that it never runs over somebody else's text.
 * Not here: writing it (lib/services/schedule/apply-change.ts).
 * Read next: ../services/schedule/apply-change.ts.
 */
import type { Cells, Column } from '#lib/intake/columns.ts';

export interface CellChange {
  readonly lineId: number;
  readonly column: Column;
  readonly before: string;
  readonly after: string;
  /** Whether the value counted as measured, before and after. */
  readonly measuredBefore: boolean;
  readonly measuredAfter: boolean;
}

/** A line whole, as it was when it was removed. */
export interface RemovedLine {
  readonly id: number;
  readonly position: number;
  readonly row: number;
  readonly version: number;
  readonly cells: Cells;
  readonly measured: readonly Column[];
  readonly listed: Cells | null;
}

export interface Moved {
  readonly lineId: number;
  readonly before: number;
  readonly after: number;
}

/** What the newest list says of a line, before and after. */
export interface Relisted {
  readonly lineId: number;
  readonly before: Cells | null;
  readonly after: Cells | null;
}

export interface ScheduleChange {
  readonly cells: readonly CellChange[];
  readonly added: readonly number[];
  readonly removed: readonly RemovedLine[];
  readonly moved: readonly Moved[];
  readonly relisted: readonly Relisted[];
}

export const NO_CHANGE: ScheduleChange = { cells: [], added: [], removed: [], moved: [], relisted: [] };

/** A cell to write: `was` is what the writer saw there; where it says something else by now, nothing is written. */
export interface CellWrite {
  readonly lineId: number;
  readonly column: Column;
  readonly text: string;
  readonly was?: string | undefined;
  readonly measured?: boolean | undefined;
}

export interface WayBack {
  readonly cells: readonly CellWrite[];
  readonly remove: readonly number[];
  readonly restore: readonly RemovedLine[];
  readonly move: readonly { readonly lineId: number; readonly position: number }[];
  readonly relist: readonly { readonly lineId: number; readonly listed: Cells | null }[];
}

export function wayBack(change: ScheduleChange): WayBack {
  return {
    cells: change.cells
      .map(({ lineId, column, before, after, measuredBefore }) => ({
        ...{ lineId, column, text: before, was: after, measured: measuredBefore },
      }))
      .toReversed(),
    remove: change.added,
    restore: change.removed,
    move: change.moved.map(({ lineId, before }) => ({ lineId, position: before })),
    relist: change.relisted.map(({ lineId, before }) => ({ lineId, listed: before })),
  };
}

/** In a few words, for the list of changes and for other people's screens. */
export function tellChange(change: ScheduleChange): string {
  const parts = [
    counted(change.cells.length, 'cell', 'written'),
    counted(change.added.length, 'line', 'added'),
    counted(change.removed.length, 'line', 'removed'),
    counted(change.moved.length, 'line', 'moved'),
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}

function counted(count: number, word: string, done: string): string {
  return count === 0 ? '' : `${count} ${word}${count === 1 ? '' : 's'} ${done}`;
}
