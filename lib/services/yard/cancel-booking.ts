/*
 * Cancels a booking before anything has left: its units are free at once, and its quote is open again.
 * Invariant: all units are set free or none; the reason is kept.
 * Not here: the same by the quote, at the Desk (../quotes/cancel-acceptance.ts).
 * Read next: end-booking.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { endBooking } from './end-booking.ts';
import { withBooking } from './with-booking.ts';

export interface BookingCancelled {
  readonly number: string;
  readonly reason: string;
}

export function cancelBooking(
  context: Context,
  { number, reason }: BookingCancelled,
): Result<{ readonly number: string; readonly freed: readonly string[] }> {
  return withBooking(context, {
    number,
    work: (tx, booking) => {
      const why = reason.trim();
      if (why === '')
        return failed({ code: 'reason-missing', sentence: 'Say why the booking is cancelled: it is kept with it.' });
      const freed = endBooking(tx, { context, booking, to: 'cancelled', why });
      if (!freed.ok) return freed;
      const detail = { freed: freed.value, why };
      logChange(tx, { context, deed: { action: 'booking cancelled', subject: `booking ${number}`, detail } });
      return ok({ number, freed: freed.value });
    },
  });
}
