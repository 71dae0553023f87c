/*
 * Pieces that were charged as lost on a return note: what was charged for each in the end, on which note, and whether it has been found since.
 * Invariant: what a note says stays; a found piece is checked in a second time, beside the record that it was missing.
 * Not here: checking it in (check-in.ts), what is given back (lib/pricing/return-charges.ts).
 * Read next: charges-of.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow, BookingUnitRow } from '#db/queries/bookings.ts';
import { decisionOnNote, noteWith } from '#db/queries/return-notes.ts';
import { type CheckedPiece, piecesOfBooking, type ReturnRow } from '#db/queries/returns.ts';
import type { Model } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Minor, toMinor } from '#lib/money/money.ts';
import type { FoundFact } from '#lib/pricing/return-facts.ts';
import type { Context } from '#lib/services/context.ts';
import { hireOfBooking } from '../hire-of-booking.ts';

export interface ChargedLoss {
  /** As it was recorded missing. */
  readonly piece: CheckedPiece;
  readonly note: { readonly number: string; readonly issuedAt: string };
  /** The last return of which something stands on a note. */
  readonly lastNoted: number;
  readonly charged_minor: Minor;
}

/** By the row of the booking. */
export function chargedAsLost(db: DbOrTx, booking: BookingRow): ReadonlyMap<number, ChargedLoss> {
  const settled = settledPieces(db, booking);
  const lastNoted = lastNotedReturn(db, booking);
  return new Map(
    settled.flatMap((piece) => {
      if (piece.note_id === null || piece.condition !== 'missing') return [];
      const note = noteWith(db, piece.note_id);
      invariant(note !== undefined, `Piece ${piece.id} stands on a note that is not there.`);
      const word = decisionOnNote(db, { noteId: note.id, charge: `loss piece ${piece.id}` });
      const told = { number: note.number, issuedAt: note.issued_at };
      const charged_minor = toMinor(word?.net_minor ?? 0);
      return [[piece.booking_unit_id, { piece, note: told, lastNoted, charged_minor }] as const];
    }),
  );
}

function settledPieces(db: DbOrTx, booking: BookingRow): readonly CheckedPiece[] {
  return piecesOfBooking(db, booking.id).filter(({ note_id }) => note_id !== null);
}

/** The last return of which something stands on a note; nought where none does. */
export function lastNotedReturn(db: DbOrTx, booking: BookingRow): number {
  return Math.max(0, ...settledPieces(db, booking).map(({ return_id }) => return_id));
}

/** What was lost and stands in the yard again is marked by the day it came. */
export function isFound({ state, back_on }: Pick<BookingUnitRow, 'state' | 'back_on'>): boolean {
  return state === 'lost' && back_on !== null;
}

/** It came after the note, so it is a return of its own, with its own declaration. */
export function cameAfter(loss: ChargedLoss, row: ReturnRow): Result<true> {
  if (row.id > loss.lastNoted && row.opened_at >= loss.note.issuedAt) return ok(true);
  return failed({
    code: 'return-too-old',
    sentence: `${loss.piece.serial} was charged as lost on note ${loss.note.number}, after this return: begin a further return for it.`,
  });
}

interface Asked {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly hireUntilFound: 'charged' | 'free';
  /** As it was found. */
  readonly piece: CheckedPiece;
  readonly loss: ChargedLoss;
  readonly model: Model;
}

export function foundFact(db: DbOrTx, asked: Asked): FoundFact {
  const { piece, loss, model } = asked;
  return {
    kind: 'found',
    about: `piece ${piece.id}`,
    number: piece.model,
    name: model.name,
    serials: [piece.serial],
    charged_minor: loss.charged_minor,
    note: loss.note.number,
    ...hireUntilFound(db, asked),
  };
}

/** As if it had only come back late, less the hire to the day on which it was reported lost. */
function hireUntilFound(db: DbOrTx, asked: Asked): Pick<FoundFact, 'hire_minor' | 'sentence'> {
  const { context, booking, piece } = asked;
  const row = piece.booking_unit_id;
  const reckoned = (found?: number) =>
    hireOfBooking(db, { context, booking, ...(found === undefined ? {} : { found }) })?.pieces.find(({ rows }) =>
      rows.includes(row),
    )?.change;
  const late = reckoned(row);
  const lost = reckoned();
  const more = (late?.charged_minor ?? 0) - (lost?.charged_minor ?? 0);
  if (asked.hireUntilFound === 'free' || late === undefined || more <= 0)
    return { hire_minor: toMinor(0), sentence: '' };
  return {
    hire_minor: toMinor(more),
    sentence: `${late.sentence} What was charged to the day of the loss is taken off.`,
  };
}
