/*
 * Writes down that holds nobody confirmed have run out: the booking lapses, its units are free, its quote is open again.
 * Invariant: done by the house itself, and first of all wherever something is booked, so that a hold that ran out never stands in the way.
 * Not here: deciding that a hold ran out (lib/stock/hold.ts).
 * Read next: end-booking.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { holdsRunOut } from '#db/queries/bookings.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { type Context, HOUSE_ITSELF, milliseconds, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { endBooking } from './end-booking.ts';

/** How often the house looks by itself while people work with it. */
const LOOK_MS = 60_000;
let lookedAt = 0;

/** Called wherever somebody asks for a page; looks once a minute, and writes only where a hold ran out. */
export function expireHoldsNowAndThen(context: Context): void {
  const now = milliseconds(context);
  if (now - lookedAt < LOOK_MS) return;
  lookedAt = now;
  if (holdsRunOut(context.database.db, timestamp(context)).length > 0) expireHolds(context);
}

/** In a transaction of its own; answers the numbers of the bookings that lapsed. */
export function expireHolds(context: Context): readonly string[] {
  return context.database.db.transaction((tx) => expireHoldsFirst(tx, context), { behavior: 'immediate' });
}

export function expireHoldsFirst(tx: DbOrTx, asked: Context): readonly string[] {
  const context = { ...asked, actor: HOUSE_ITSELF };
  return holdsRunOut(tx, timestamp(context)).map((booking) => {
    const why = `nobody confirmed it by ${booking.held_until?.slice(0, 16).replace('T', ' ')} UTC`;
    const ended = endBooking(tx, { context, booking, to: 'lapsed', why });
    invariant(ended.ok, ended.ok ? '' : ended.reason.sentence);
    const detail = { freed: ended.value, why };
    logChange(tx, {
      context,
      deed: { action: 'hold ran out, units set free', subject: `booking ${booking.number}`, detail },
    });
    return booking.number;
  });
}
