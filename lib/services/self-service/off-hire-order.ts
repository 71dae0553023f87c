/*
 * The word of an order's owner that the hire of pieces ends: numbered and timed at the moment it is sent.
 * Invariant: each piece is given notice of once; pressed again, the notice that stands is told and none is added.
 * Not here: taking the notice down (../yard/off-hire.ts), and fetching the equipment.
 * Read next: order-hire.ts.
 */
import { noticedUnits } from '#db/queries/booking-history.ts';
import { unitsOfBooking } from '#db/queries/bookings.ts';
import { newestBookingOfEnquiry } from '#db/queries/order-hire.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { giveOffHireNotice, type OffHireGiven } from '#lib/services/yard/off-hire.ts';
import { type LinkAsked, openToAct, wayIn } from './open-link.ts';

export interface OrderOffHire extends LinkAsked {
  readonly saidBy: string;
  /** Which pieces; none means all that are on hire. */
  readonly serials: readonly string[];
}

export function giveOrderOffHire(context: Context, { saidBy, serials, ...asked }: OrderOffHire): Result<OffHireGiven> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToAct(context, asked);
  if (!opened.ok) return opened;
  const { order, desk } = opened.value;
  const { db } = context.database;
  const booking = newestBookingOfEnquiry(db, order.enquiry_id);
  if (booking === undefined) return failed({ code: 'no-such-booking', sentence: 'Nothing is booked for this order.' });
  const mine = unitsOfBooking(db, booking.id).filter(
    ({ unit_serial }) => serials.length === 0 || serials.includes(unit_serial),
  );
  const strange = serials.find((serial) => !mine.some(({ unit_serial }) => unit_serial === serial));
  if (strange !== undefined) return notOnHire();
  const noticed = noticedUnits(db, booking.id);
  const left = mine.filter(({ id, state }) => state === 'out' && !noticed.has(id));
  if (left.length === 0) {
    const standing = mine.map(({ id }) => noticed.get(id)).find((notice) => notice !== undefined);
    return standing === undefined ? notOnHire() : ok({ notice: standing.number, serials: [] });
  }
  const given = giveOffHireNotice(desk, {
    number: booking.number,
    noticedAt: timestamp(context),
    saidBy,
    serials: left.map(({ unit_serial }) => unit_serial),
    note: `Given ${wayIn(opened.value)}.`,
  });
  return given.ok || given.reason.code === 'said-by-missing' ? given : notOnHire();
}

function notOnHire(): Result<never> {
  return failed({ code: 'not-on-hire', sentence: 'Nothing of that is on hire without a notice: load the page again.' });
}
