/*
 * Everything that holds a unit, row by row with the booking it belongs to, and how room is made where one is kept longer.
 * Invariant: the same rows and days that availability is decided on; a unit is moved only where nobody has put hands on it.
 * Not here: deciding who has to make way (lib/stock/make-way.ts).
 * Read next: extend-booking.ts, report-late.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { bookingsById, engagedBookingUnits, unitOfBooking } from '#db/queries/bookings.ts';
import { customerOfBooking } from '#db/queries/bookings-found.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { houseFacts, houseUnits, onTheWay, unitBookingOf } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { type Engagement, makeWay, type WayAsked, type WayMade } from '#lib/stock/make-way.ts';
import { bookedUnitStateOf } from './booking-record.ts';
import { replaceUnit } from './replace-unit.ts';

export function engagementsNow(db: DbOrTx, context: Context): readonly Engagement[] {
  const rows = engagedBookingUnits(db, { at: timestamp(context) });
  const bookings = bookingsById(db, [...new Set(rows.map(({ booking_id }) => booking_id))]);
  return rows.flatMap((row) =>
    unitBookingOf({ row, today: today(context) }).map((engaged) => ({
      ...engaged,
      id: row.id,
      booking: bookings.get(row.booking_id)?.number ?? '',
      state: bookedUnitStateOf(row),
    })),
  );
}

/** A booking that counts on a unit which is kept, and what becomes of it. */
export interface Hit {
  readonly booking: string;
  readonly customer: string;
  readonly startsOn: string;
  readonly serial: string;
  /** The unit it gets instead; null where there is none, and somebody has to act. */
  readonly instead: string | null;
}

export function wayFor(tx: DbOrTx, { context, kept }: { readonly context: Context } & Pick<WayAsked, 'kept'>): WayMade {
  return makeWay({
    units: houseUnits(tx),
    engagements: engagementsNow(tx, context),
    kept,
    away: onTheWay(context),
    turnaroundDays: houseFacts(context).turnaroundDays,
  });
}

/** Gives each of the moved bookings its other unit. */
export function takeWay(
  tx: DbOrTx,
  { context, way, why }: { readonly context: Context; readonly way: WayMade; readonly why: string },
): Result<true> {
  for (const { hit, to } of way.moves) {
    const row = unitOfBooking(tx, hit.id);
    const booking = row === undefined ? undefined : bookingsById(tx, [row.booking_id]).get(row.booking_id);
    invariant(row && booking, 'A unit that makes way belongs to a booking.');
    const { starts_on, ends_before, free_again_on: freeAgainOn } = row;
    const window = { starts_on, ends_before };
    const replaced = replaceUnit(tx, { context, booking, row, serial: to.serial, window, freeAgainOn, why });
    if (!replaced.ok) return replaced;
    const detail = { from: hit.serial, to: to.serial, why };
    logChange(tx, {
      context,
      deed: { action: 'unit of a booking replaced', subject: `booking ${booking.number}`, detail },
    });
  }
  return ok(true);
}

export function hitsOf(db: DbOrTx, { moves, hits }: WayMade): readonly Hit[] {
  const told = (hit: Engagement, instead: string | null): Hit => ({
    booking: hit.booking,
    customer: customerOfBooking(db, hit.booking),
    startsOn: hit.window.starts_on,
    serial: hit.serial,
    instead,
  });
  return [...moves.map(({ hit, to }) => told(hit, to.serial)), ...hits.map((hit) => told(hit, null))];
}

/** Whom it hits, in words. */
export function tellHits(hits: readonly Hit[]): string {
  return hits
    .filter(({ instead }) => instead === null)
    .map(
      ({ booking, customer, startsOn, serial }) =>
        `${serial} is booked from ${startsOn} by ${booking}${customer === '' ? '' : ` (${customer})`}`,
    )
    .join('; ');
}
