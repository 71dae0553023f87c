/*
 * Closes a booking once everything is back and checked in: nothing more is charged or asked for.
 * Invariant: what is lost is settled first, counted pieces are counted back and the missing ones taken off the shelf, and a unit that failed on hire and was swapped has come back too.
 * Not here: checking in and charging (the return).
 * Read next: end-booking.ts.
 */
import { unitsOfBooking } from '#db/queries/bookings.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { countedPieces } from './back/counted-pieces.ts';
import { takeOffShelves } from './back/take-off-shelves.ts';
import type { BookingNamed } from './confirm-booking.ts';
import { endBooking } from './end-booking.ts';
import { withBooking } from './with-booking.ts';

export function closeBooking(context: Context, { number }: BookingNamed): Result<BookingNamed> {
  return withBooking(context, {
    number,
    work: (tx, booking) => {
      const away = unitsOfBooking(tx, booking.id).find(
        ({ state, out_on, back_on }) => state === 'swapped' && out_on !== null && back_on === null,
      );
      if (away !== undefined)
        return failed({
          code: 'swapped-unit-away',
          sentence: `${away.unit_serial} was swapped and has not come back yet: take it back, then close booking ${number}.`,
        });
      const uncounted = countedPieces(context, booking).find(({ sent, returns }) => sent > 0 && returns.length === 0);
      if (uncounted !== undefined)
        return failed({
          code: 'pieces-uncounted',
          sentence: `${uncounted.sent} of ${uncounted.model} were sent and nobody has counted them back: count them first, nought where none came.`,
        });
      takeOffShelves(tx, { context, booking });
      const ended = endBooking(tx, { context, booking, to: 'closed', why: '' });
      if (!ended.ok) return ended;
      logChange(tx, { context, deed: { action: 'booking closed', subject: `booking ${number}` } });
      return ok({ number });
    },
  });
}
