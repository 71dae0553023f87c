/*
 * Reads who counts on a unit after the booking that has it now, and for whom a booking is.
 * Invariant: reads only; a hold that ran out counts until it is written down as lapsed.
 * Not here: what is free (lib/stock).
 * Read next: bookings.ts.
 */
import { and, asc, eq, inArray, ne, sql } from 'drizzle-orm';
import { HOLDING_STATES } from '#lib/stock/booking-life.ts';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { customer } from '../schema/customer.ts';
import { enquiry } from '../schema/enquiry.ts';
import { quote } from '../schema/quote.ts';

/** That of the quote, or the one for whom it was booked without. */
const ITS_CUSTOMER = sql`${customer.id} = coalesce(${enquiry.customer_id}, ${booking.customer_id})`;

export interface NextHire {
  readonly serial: string;
  readonly booking: string;
  readonly customer: string | null;
  readonly startsOn: string;
  readonly freeAgainOn: string;
}

interface NextAsked {
  readonly serials: readonly string[];
  readonly beside: number;
}

/** Other bookings that hold these units, the earliest first. */
export function nextHires(db: DbOrTx, { serials, beside }: NextAsked): readonly NextHire[] {
  return db
    .select({
      serial: bookingUnit.unit_serial,
      booking: booking.number,
      customer: customer.name,
      startsOn: bookingUnit.starts_on,
      freeAgainOn: bookingUnit.free_again_on,
    })
    .from(bookingUnit)
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .leftJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .leftJoin(customer, ITS_CUSTOMER)
    .where(
      and(
        inArray(bookingUnit.unit_serial, [...serials]),
        inArray(bookingUnit.state, [...HOLDING_STATES]),
        ne(bookingUnit.booking_id, beside),
      ),
    )
    .orderBy(asc(bookingUnit.starts_on))
    .all();
}

export interface BookingFor {
  /** Null where it is the house's own. */
  readonly customer: string | null;
  readonly title: string | null;
}

export function bookingFor(db: DbOrTx, bookingId: number): BookingFor | undefined {
  return db
    .select({
      customer: customer.name,
      title: sql<string | null>`coalesce(${enquiry.title}, nullif(${booking.purpose}, ''))`,
    })
    .from(booking)
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .leftJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .leftJoin(customer, ITS_CUSTOMER)
    .where(eq(booking.id, bookingId))
    .get();
}

/** In which booking a unit is out; undefined where it is in none. */
export function outWith(db: DbOrTx, serial: string): string | undefined {
  return db
    .select({ number: booking.number })
    .from(bookingUnit)
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .where(and(eq(bookingUnit.unit_serial, serial), inArray(bookingUnit.state, ['out', 'back'])))
    .get()?.number;
}
