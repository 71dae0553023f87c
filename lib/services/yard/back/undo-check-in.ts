/*
 * Takes a check-in back: the piece is out again as before, and the work it asked for is withdrawn.
 * Invariant: nothing that stands on a return note or on which work has begun is taken back; the record stays, marked with who and why.
 * Not here: taking back a delivery (../out/take-back-delivery.ts).
 * Read next: ../undo-units.ts.
 */
import { z } from 'zod';
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, type BookingUnitRow, changeBookingUnit, findBookingUnit } from '#db/queries/bookings.ts';
import { changePiece, findPiece, type PieceRow } from '#db/queries/returns.ts';
import { changeOrder, ordersOfPieces } from '#db/queries/work-orders.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { recordMove } from '../booking-record.ts';
import { undoUnits } from '../undo-units.ts';
import { moveUnit, unitWith } from '../unit-places.ts';
import { isFound } from './charged-as-lost.ts';
import { returnTakenIn } from './return-record.ts';

export interface CheckInUndo {
  readonly pieceId: number;
  readonly why: string;
}

export function undoCheckIn(context: Context, undo: CheckInUndo): Result<{ readonly serial: string }> {
  const allowed = authorise(context, 'take equipment back');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => takeBack(tx, { context, undo }), { behavior: 'immediate' });
}

interface Undoing {
  readonly context: Context;
  readonly undo: CheckInUndo;
}

function takeBack(tx: DbOrTx, { context, undo }: Undoing): Result<{ readonly serial: string }> {
  const piece = standingPiece(tx, undo.pieceId);
  if (!piece.ok) return piece;
  const record = returnTakenIn(tx, piece.value.return_id);
  if (!record.ok) return record;
  if (piece.value.note_id !== null)
    return failed({
      code: 'piece-settled',
      sentence: 'It stands on a return note by now, and stays as it was checked in.',
    });
  const orders = ordersOfPieces(tx, [piece.value.id]);
  const begun = orders.find(({ state }) => state === 'doing' || state === 'done');
  if (begun)
    return failed({ code: 'work-begun', sentence: `${begun.number} was begun on it by now: the check-in stays.` });
  const booked = findBookingUnit(tx, piece.value.booking_unit_id);
  invariant(booked !== undefined, 'A checked-in piece is a unit of a booking.');
  const unit = unitWith(tx, booked.unit_serial);
  if (!unit.ok) return unit;
  const before = BEFORE.parse(JSON.parse(piece.value.before_json));
  if (isFound(booked) && before.state === 'lost' && unit.value.state !== 'quarantine')
    return failed({
      code: 'unit-taken-again',
      sentence: `${booked.unit_serial} is ${unit.value.state} by now: the check-in stays.`,
    });
  const { booking } = record.value;
  const undone = stepBack(tx, { context, booking, booked, why: undo.why });
  if (!undone.ok) return undone;
  const at = timestamp(context);
  changePiece(tx, { id: piece.value.id, set: { undone_at: at, undone_why: undo.why } });
  for (const { id } of orders)
    changeOrder(tx, {
      id,
      set: { state: 'withdrawn', ended_at: at, ended_by: context.actor.name, done: 'the check-in was taken back' },
    });
  moveUnit(tx, {
    context,
    unit: unit.value,
    set: isFound(booked) && before.state !== 'lost' ? {} : before,
    kind: isFound(booked) ? 'missing' : 'out',
    before: unit.value.state,
    after: isFound(booked) && before.state !== 'lost' ? unit.value.state : before.state,
    reason: `check-in taken back: ${undo.why}`,
    reference: booking.number,
  });
  const detail = { serial: booked.unit_serial, why: undo.why };
  logChange(tx, { context, deed: { action: 'check-in taken back', subject: `booking ${booking.number}`, detail } });
  return ok({ serial: booked.unit_serial });
}

interface SteppingBack {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly booked: BookingUnitRow;
  readonly why: string;
}

/** A swapped unit stays swapped and a lost one lost; it is only away again. */
function stepBack(tx: DbOrTx, { context, booking, booked, why }: SteppingBack): Result<true> {
  if (isFound(booked)) {
    const found = { context, bookingId: booking.id, unit: booked.unit_serial, from: 'lost', to: 'lost' } as const;
    changeBookingUnit(tx, { id: booked.id, set: { back_on: null } });
    recordMove(tx, { ...found, what: 'not found after all', why });
    return ok(true);
  }
  if (booked.state !== 'swapped')
    return undoUnits(tx, { context, booking, units: [booked], to: 'out', what: 'check-in taken back', why });
  changeBookingUnit(tx, { id: booked.id, set: { back_on: null } });
  return ok(true);
}

const BEFORE = z.object({ state: z.string(), depot: z.string(), run_hours: z.number() });

export function standingPiece(tx: DbOrTx, id: number): Result<PieceRow> {
  const piece = findPiece(tx, id);
  if (piece && piece.undone_at === null) return ok(piece);
  return failed({ code: 'no-such-piece', sentence: 'That piece is not checked in; load the page again.' });
}
