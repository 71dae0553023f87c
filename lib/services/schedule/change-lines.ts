/*
 * Adds lines typed or pasted at the Desk, removes lines and gives lines another place.
 * Invariant: removed lines come back whole in the answer and under their own ids by undo.
 * Not here: editing cells of lines that are there (edit-cells.ts).
 * Read next: apply-change.ts, undo-change.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { countLines, lastRow, lineStamps } from '#db/queries/schedule.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { placeBetween } from '#lib/schedule/place-between.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { type Applied, applyChange, type ChangeToApply } from './apply-change.ts';
import { announceChange } from './live-changes.ts';

export interface NewLine {
  readonly cells: Cells;
  readonly measured?: readonly string[] | undefined;
  /** Where a removed line stood: given back, it goes there again instead of to the end. */
  readonly place?: { readonly position: number; readonly row: number } | undefined;
}

export interface LinesAdded {
  readonly lineIds: readonly number[];
  /** Number of the change, for undo. */
  readonly change: number;
}

interface NewLines {
  readonly enquiryId: number;
  readonly lines: readonly NewLine[];
  /** The line that they come after; 0 for the beginning, absent for the end. */
  readonly after?: number | undefined;
}

export function addLines(context: Context, input: NewLines): Result<LinesAdded> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  if (countLines(context.database.db, input.enquiryId) + input.lines.length > LIMITS.schedule_lines) {
    return failed({
      code: 'too-many-lines',
      sentence: `A schedule holds at most ${LIMITS.schedule_lines} lines; split the list over several enquiries.`,
    });
  }
  const applied = inOneGo(context, input.enquiryId, (tx) => ({ kind: 'added', change: placed(tx, input) }));
  return ok({ lineIds: applied.done.added, change: applied.change });
}

function placed(tx: DbOrTx, { enquiryId, lines, after }: NewLines): ChangeToApply {
  const stamps = lineStamps(tx, enquiryId);
  const found = after === undefined ? -1 : stamps.findIndex(({ id }) => id === after);
  const at = after === 0 ? 0 : found < 0 ? stamps.length : found + 1;
  const { positions, shift } = placeBetween({ lines: stamps, at, count: lines.length });
  const row = lastRow(tx, enquiryId);
  return {
    move: shift.map(({ id, position }) => ({ lineId: id, position })),
    add: lines.map(({ cells, measured, place }, index) => ({
      position: place?.position ?? positions[index] ?? stamps.length,
      row: place?.row ?? row + index + 1,
      ...{ cells: filled(cells), measured: measured ?? [], listed: null },
    })),
  };
}

function filled(cells: Cells): Cells {
  return Object.fromEntries(Object.entries(cells).filter(([, text]) => text.trim() !== ''));
}

export interface LinesRemoved {
  readonly removed: readonly NewLine[];
  readonly change: number;
}

export function removeLines(
  context: Context,
  input: { readonly enquiryId: number; readonly lineIds: readonly number[] },
): Result<LinesRemoved> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const applied = inOneGo(context, input.enquiryId, () => ({ kind: 'removed', change: { remove: input.lineIds } }));
  const removed = applied.done.removed.map(
    ({ cells, measured, position, row }): NewLine => ({ cells, measured, place: { position, row } }),
  );
  return ok({ removed, change: applied.change });
}

interface LinesToMove {
  readonly enquiryId: number;
  readonly lineIds: readonly number[];
  /** The line that they come before; 0 for the end. */
  readonly before: number;
}

/** The lines keep their order among each other. */
export function moveLines(context: Context, input: LinesToMove): Result<{ readonly change: number }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const applied = inOneGo(context, input.enquiryId, (tx) => ({ kind: 'moved', change: moved(tx, input) }));
  return ok({ change: applied.change });
}

function moved(tx: DbOrTx, { enquiryId, lineIds, before }: LinesToMove): ChangeToApply {
  const stamps = lineStamps(tx, enquiryId);
  const among = new Set(lineIds);
  const moving = stamps.filter(({ id }) => among.has(id));
  const staying = stamps.filter(({ id }) => !among.has(id));
  const found = staying.findIndex(({ id }) => id === before);
  const at = found < 0 ? staying.length : found;
  const { positions, shift } = placeBetween({ lines: staying, at, count: moving.length });
  return {
    move: [
      ...shift.map(({ id, position }) => ({ lineId: id, position })),
      ...moving.map(({ id, position }, index) => ({ lineId: id, position: positions[index] ?? position })),
    ],
  };
}

function inOneGo(
  context: Context,
  enquiryId: number,
  decide: (tx: DbOrTx) => { readonly kind: 'added' | 'removed' | 'moved'; readonly change: ChangeToApply },
): Applied {
  const applied = context.database.db.transaction((tx) => applyChange(context, tx, { enquiryId, ...decide(tx) }), {
    behavior: 'immediate',
  });
  if (applied.change > 0) announceChange(enquiryId);
  return applied;
}
