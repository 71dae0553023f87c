/*
 * Reads what leaves the yard and what comes back: bookings with their first and last day and how many pieces they hold.
 * Invariant: reads only; lists are bounded and come in order of their day.
 * Not here: what a state means (lib/stock, lib/services/yard).
 * Read next: bookings.ts.
 */
import { and, asc, eq, inArray, lte, sql } from 'drizzle-orm';
import { HOLDING_STATES } from '#lib/stock/booking-life.ts';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { customer } from '../schema/customer.ts';
import { enquiry } from '../schema/enquiry.ts';
import { quote } from '../schema/quote.ts';

/** Nobody loads more than this in a day; beyond it stands on the pages of bookings. */
const MOST = 200;

const STARTS_ON = sql<string>`min(${bookingUnit.starts_on})`;
const ENDS_BEFORE = sql<string>`max(${bookingUnit.ends_before})`;

export interface Movement {
  readonly booking: string;
  readonly state: string;
  readonly startsOn: string;
  readonly endsBefore: string;
  readonly units: number;
  readonly enquiryId: number | null;
  readonly title: string | null;
  readonly customer: string | null;
}

interface MovementsAsked {
  readonly states: readonly string[];
  /** The day on which they start or after which they end. */
  readonly by: 'start' | 'end';
  readonly until: string;
}

export function movements(db: DbOrTx, { states, by, until }: MovementsAsked): readonly Movement[] {
  const day = by === 'start' ? STARTS_ON : ENDS_BEFORE;
  return db
    .select({
      booking: booking.number,
      state: booking.state,
      startsOn: STARTS_ON,
      endsBefore: ENDS_BEFORE,
      units: sql<number>`count(*)`,
      enquiryId: enquiry.id,
      title: enquiry.title,
      customer: customer.name,
    })
    .from(booking)
    .innerJoin(
      bookingUnit,
      and(eq(bookingUnit.booking_id, booking.id), inArray(bookingUnit.state, [...HOLDING_STATES])),
    )
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .leftJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .leftJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(inArray(booking.state, [...states]))
    .groupBy(booking.id)
    .having(lte(day, until))
    .orderBy(asc(day), asc(booking.number))
    .limit(MOST)
    .all();
}
