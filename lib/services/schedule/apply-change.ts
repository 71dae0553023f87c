/*
 * Writes one change of a schedule, all of it together: cells, lines added, restored, removed, moved, and what the list says of them.
 * Invariant: a cell that says something else than its writer saw is left alone and told; what was done is kept whole, so that it can be taken back.
 * Not here: who may (the verbs), and what is to be written (edit-cells.ts, change-lines.ts, take-comparison.ts).
 * Read next: ../../schedule/schedule-change.ts, undo-change.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { changeEnquiry as touch } from '#db/queries/enquiries.ts';
import {
  changeLines,
  deleteLines,
  findLines,
  insertLines,
  type LineRow,
  placeLines,
  relistLines,
  restoreLines,
} from '#db/queries/schedule.ts';
import { insertScheduleChange } from '#db/queries/schedule-changes.ts';
import type { Cells, Column } from '#lib/intake/columns.ts';
import {
  type CellWrite,
  NO_CHANGE,
  type RemovedLine,
  type ScheduleChange,
  tellChange,
  type WayBack,
} from '#lib/schedule/schedule-change.ts';
import { type CellClash, writeCells } from '#lib/schedule/write-cells.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { moveByDeed } from '#lib/services/enquiries/move-enquiry.ts';

export interface LineToAdd {
  readonly position: number;
  readonly row: number;
  readonly cells: Cells;
  readonly measured: readonly string[];
  readonly listed: Cells | null;
}

export interface ChangeToApply extends Partial<WayBack> {
  readonly add?: readonly LineToAdd[];
}

export interface Applied {
  /** Number of the change; 0 where nothing was to be done. */
  readonly change: number;
  readonly done: ScheduleChange;
  readonly clashes: readonly CellClash[];
}

export type ChangeKind = 'edited' | 'added' | 'removed' | 'moved' | 'list' | 'undone';

const ACTIONS: Readonly<Record<ChangeKind, string>> = {
  edited: 'cells edited',
  added: 'lines added',
  removed: 'lines removed',
  moved: 'lines moved',
  list: 'changed list taken',
  undone: 'change taken back',
};

interface Request {
  readonly enquiryId: number;
  readonly kind: ChangeKind;
  readonly change: ChangeToApply;
}

/** To be called inside a transaction. */
export function applyChange(context: Context, tx: DbOrTx, { enquiryId, kind, change }: Request): Applied {
  const { cells, clashes } = applyCells(tx, { enquiryId, writes: change.cells ?? [] });
  const done: ScheduleChange = {
    ...NO_CHANGE,
    cells,
    relisted: applyListed(tx, { enquiryId, relist: change.relist ?? [] }),
    moved: applyMoves(tx, { enquiryId, move: change.move ?? [] }),
    removed: removeThem(tx, { enquiryId, lineIds: change.remove ?? [] }),
    added: [
      ...restoreThem(tx, { enquiryId, lines: change.restore ?? [] }),
      ...addThem(tx, enquiryId, change.add ?? []),
    ],
  };
  if (tellChange(done) === 'nothing' && done.relisted.length === 0) return { change: 0, done, clashes };
  return { change: record(context, tx, { enquiryId, kind, done }), done, clashes };
}

/** Enters a change into the log, raises the enquiry's version and answers with the change's number. */
function record(
  context: Context,
  tx: DbOrTx,
  entry: { readonly enquiryId: number; readonly kind: ChangeKind; readonly done: ScheduleChange },
): number {
  const { enquiryId, kind, done } = entry;
  const at = timestamp(context);
  const { id: who_id, name } = context.actor;
  touch(tx, { id: enquiryId, at, set: {} });
  moveByDeed(tx, { context, enquiryId, by: 'work', to: 'being worked' });
  const id = insertScheduleChange(tx, {
    ...{ enquiry_id: enquiryId, at, who: name, who_id, screen: context.screen ?? '', kind },
    detail_json: JSON.stringify(done),
  });
  addAuditEntry(tx, {
    ...{ at, who: context.actor, action: ACTIONS[kind], subject: `enquiry ${enquiryId}` },
    detail_json: JSON.stringify({ what: tellChange(done), change: id }),
  });
  return id;
}

function applyCells(
  tx: DbOrTx,
  { enquiryId, writes }: { readonly enquiryId: number; readonly writes: readonly CellWrite[] },
) {
  if (writes.length === 0) return { cells: [], clashes: [] };
  const rows = findLines(tx, { enquiryId, lineIds: [...new Set(writes.map(({ lineId }) => lineId))] });
  const written = writeCells({ lines: new Map(rows.map((row) => [row.id, readWritten(row)])), writes });
  changeLines(
    tx,
    written.lines.map(({ id, cells, measured }) => ({
      ...{ id, cells_json: JSON.stringify(cells), measured_json: JSON.stringify(measured) },
    })),
  );
  return { cells: written.done, clashes: written.clashes };
}

function applyListed(
  tx: DbOrTx,
  { enquiryId, relist }: { readonly enquiryId: number; readonly relist: WayBack['relist'] },
): ScheduleChange['relisted'] {
  const byId = new Map(relist.map(({ lineId, listed }) => [lineId, listed]));
  const changed = findLines(tx, { enquiryId, lineIds: [...byId.keys()] }).flatMap((row) => {
    const after = byId.get(row.id) ?? null;
    return sameJson(row.listed_json, after) ? [] : [{ lineId: row.id, before: cellsOf(row.listed_json), after }];
  });
  relistLines(
    tx,
    changed.map(({ lineId, after }) => ({ id: lineId, listed: after === null ? null : JSON.stringify(after) })),
  );
  return changed;
}

function sameJson(text: string | null, cells: Cells | null): boolean {
  return text === (cells === null ? null : JSON.stringify(cells));
}

function applyMoves(
  tx: DbOrTx,
  { enquiryId, move }: { readonly enquiryId: number; readonly move: WayBack['move'] },
): ScheduleChange['moved'] {
  const byId = new Map(move.map(({ lineId, position }) => [lineId, position]));
  const moved = findLines(tx, { enquiryId, lineIds: [...byId.keys()] }).flatMap((row) => {
    const after = byId.get(row.id) ?? row.position;
    return after === row.position ? [] : [{ lineId: row.id, before: row.position, after }];
  });
  placeLines(
    tx,
    moved.map(({ lineId, after }) => ({ id: lineId, position: after })),
  );
  return moved;
}

function removeThem(
  tx: DbOrTx,
  key: { readonly enquiryId: number; readonly lineIds: readonly number[] },
): readonly RemovedLine[] {
  if (key.lineIds.length === 0) return [];
  const rows = findLines(tx, key).toSorted((a, b) => a.position - b.position || a.id - b.id);
  deleteLines(tx, key);
  return rows.map(removedLine);
}

function removedLine(row: LineRow): RemovedLine {
  const { id, position, version } = row;
  return { ...{ id, position, row: row.row, version }, ...readWritten(row), listed: cellsOf(row.listed_json) };
}

function restoreThem(
  tx: DbOrTx,
  { enquiryId, lines }: { readonly enquiryId: number; readonly lines: readonly RemovedLine[] },
): readonly number[] {
  if (lines.length === 0) return [];
  const there = new Set(findLines(tx, { enquiryId, lineIds: lines.map(({ id }) => id) }).map(({ id }) => id));
  const missing = lines.filter(({ id }) => !there.has(id));
  restoreLines(
    tx,
    missing.map(({ id, position, row, version, cells, measured, listed }) => ({
      ...{ id, enquiry_id: enquiryId, position, row, version },
      cells_json: JSON.stringify(cells),
      measured_json: JSON.stringify(measured),
      listed_json: listed === null ? null : JSON.stringify(listed),
    })),
  );
  return missing.map(({ id }) => id);
}

function addThem(tx: DbOrTx, enquiryId: number, lines: readonly LineToAdd[]): readonly number[] {
  return insertLines(
    tx,
    lines.map(({ position, row, cells, measured, listed }) => ({
      ...{ enquiry_id: enquiryId, position, row },
      cells_json: JSON.stringify(cells),
      measured_json: JSON.stringify(measured),
      listed_json: listed === null ? null : JSON.stringify(listed),
    })),
  );
}

function readWritten(row: LineRow): { readonly cells: Cells; readonly measured: readonly Column[] } {
  return { cells: JSON.parse(row.cells_json) as Cells, measured: JSON.parse(row.measured_json) as Column[] };
}

function cellsOf(json: string | null): Cells | null {
  return json === null ? null : (JSON.parse(json) as Cells);
}
