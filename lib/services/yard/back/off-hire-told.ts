/*
 * The off-hire notices of a booking, as the return note tells them.
 * Invariant: reads only; in the order of their numbers.
 * Not here: giving a notice (../off-hire.ts).
 * Read next: return-note-input.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import { noticesOfBooking } from '#db/queries/off-hire-told.ts';
import { dateText } from '#lib/documents/words/print-values.ts';

export function offHireNotices(db: DbOrTx, booking: BookingRow) {
  return noticesOfBooking(db, booking.id).map(({ number, noticedAt, saidBy, units }) => ({
    number,
    at: `${dateText(noticedAt.slice(0, 10))}, ${noticedAt.slice(11, 16)} UTC`,
    saidBy,
    units,
  }));
}
