/*
 * A return as its services read it, with its booking, and what stands for every return of it.
 * Invariant: nothing is checked in for a booking that has ended, but what was charged as lost and is found after it closed.
 * Not here: deciding and writing (check-in.ts, count-back.ts).
 * Read next: open-return.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, findBookingById } from '#db/queries/bookings.ts';
import { findReturn, piecesOfBooking, type ReturnRow } from '#db/queries/returns.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { hasEnded } from '#lib/stock/booking-life.ts';
import { CONTAMINATIONS, type Contamination } from '#lib/stock/check-in.ts';
import { bookingStateOf } from '../booking-record.ts';

export interface ReturnRecord {
  readonly row: ReturnRow;
  readonly booking: BookingRow;
}

export function readReturn(db: DbOrTx, id: number): Result<ReturnRecord> {
  const row = findReturn(db, id);
  const booking = row && findBookingById(db, row.booking_id);
  if (row && booking) return ok({ row, booking });
  return failed({
    code: 'no-such-return',
    sentence: 'That return was never opened: open the booking again and declare what it came from.',
  });
}

export function returnUnderWay(db: DbOrTx, id: number): Result<ReturnRecord> {
  const record = readReturn(db, id);
  if (!record.ok) return record;
  const { booking } = record.value;
  return hasEnded(bookingStateOf(booking)) ? bookingEnded(booking) : record;
}

/** Of a closed booking only what was lost is awaited, so that every other piece is refused by itself. */
export function returnTakenIn(db: DbOrTx, id: number): Result<ReturnRecord> {
  const record = readReturn(db, id);
  if (!record.ok || bookingStateOf(record.value.booking) === 'closed') return record;
  return returnUnderWay(db, id);
}

/** Charges are decided while the booking runs, and after it for what was found since the last note. */
export function mayBeSettled(db: DbOrTx, booking: BookingRow): Result<true> {
  const state = bookingStateOf(booking);
  if (!hasEnded(state)) return ok(true);
  const isFound = piecesOfBooking(db, booking.id).some(({ note_id }) => note_id === null);
  return state === 'closed' && isFound ? ok(true) : bookingEnded(booking);
}

export function bookingEnded(booking: BookingRow) {
  return failed({
    code: 'booking-ended',
    sentence: `Booking ${booking.number} is ${booking.state}: nothing more goes out or comes back with it.`,
  });
}

export function contaminationOf({ contamination }: Pick<ReturnRow, 'contamination'>): Contamination {
  const known = CONTAMINATIONS.find((one) => one === contamination);
  invariant(known !== undefined, `A return cannot be contaminated with ${contamination}.`);
  return known;
}

/** `sewage`, `product: diesel`, `none`. */
export function contaminationWords(row: Pick<ReturnRow, 'contamination' | 'contamination_note'>): string {
  return row.contamination_note === '' ? row.contamination : `${row.contamination}: ${row.contamination_note}`;
}
