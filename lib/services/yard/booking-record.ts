/*
 * A booking as its services read it, and the line of its history that every change writes.
 * Invariant: what is written is written in the transaction of the change, beside the house's own log.
 * Not here: which steps are allowed (lib/stock/booking-life.ts).
 * Read next: step-units.ts, end-booking.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addBookingMove } from '#db/queries/booking-history.ts';
import { type BookingRow, type BookingUnitRow, findBooking } from '#db/queries/bookings.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { type BookedUnitState, type BookingState, isBookedUnitState, isBookingState } from '#lib/stock/booking-life.ts';

export function bookingNumbered(db: DbOrTx, number: string): Result<BookingRow> {
  const row = findBooking(db, number);
  return row ? ok(row) : noSuchBooking(number);
}

export function noSuchBooking(number: string): Failed<Refused> {
  return failed({
    code: 'no-such-booking',
    sentence: `There is no booking ${number}; look for it in the list of bookings.`,
  });
}

export function bookingStateOf(row: BookingRow): BookingState {
  invariant(isBookingState(row.state), `A booking cannot be ${row.state}.`);
  return row.state;
}

export function bookedUnitStateOf(row: Pick<BookingUnitRow, 'state'>): BookedUnitState {
  invariant(isBookedUnitState(row.state), `A unit of a booking cannot be ${row.state}.`);
  return row.state;
}

interface Recorded {
  readonly context: Context;
  readonly bookingId: number;
  /** Serial number; null where the booking as a whole is meant. */
  readonly unit: string | null;
  readonly what: string;
  readonly from: BookingState | BookedUnitState;
  readonly to: BookingState | BookedUnitState;
  readonly why?: string | undefined;
  readonly detail?: string | undefined;
}

export function recordMove(tx: DbOrTx, { context, bookingId, unit, what, from, to, why, detail }: Recorded): void {
  const { id, name } = actingPerson(context);
  addBookingMove(tx, {
    booking_id: bookingId,
    unit_serial: unit,
    what,
    from_state: from,
    to_state: to,
    at: timestamp(context),
    who_id: id,
    who: name,
    why: why ?? '',
    detail: detail ?? '',
  });
}
