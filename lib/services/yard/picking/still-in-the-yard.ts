/*
 * Whether a booking may be worked on in the yard: confirmed, and not gone.
 * Invariant: what is only held may lapse, so nobody picks it.
 * Not here: confirming (../confirm-booking.ts).
 * Read next: ../take-scan.ts.
 */
import type { BookingRow } from '#db/queries/bookings.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { bookingStateOf } from '../booking-record.ts';

export function stillInTheYard(booking: BookingRow): Result<true> {
  const state = bookingStateOf(booking);
  switch (state) {
    case 'confirmed':
    case 'allocated':
    case 'picked':
      return ok(true);
    // The rest of a part delivery is still picked.
    case 'out':
      return ok(true);
    case 'held':
      return failed({
        code: 'booking-not-confirmed',
        sentence: `${booking.number} is only held: the Desk confirms it first.`,
      });
    default:
      return failed({
        code: 'booking-not-in-the-yard',
        sentence: `${booking.number} is ${state}: nothing is picked for it.`,
      });
  }
}
