/*
 * What was quoted to and booked for a customer, over all its enquiries.
 * Invariant: the newest first, and no more than can be read.
 * Not here: the quotes of one enquiry (quotes.ts).
 * Read next: ../schema/quote.ts, ../schema/booking.ts.
 */
import { desc, eq, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { enquiry } from '../schema/enquiry.ts';
import { quote } from '../schema/quote.ts';

const ROWS_MOST = 200;

export interface CustomerQuote {
  readonly id: number;
  readonly enquiryId: number;
  readonly enquiry: string;
  readonly number: string;
  readonly revision: string;
  readonly state: string;
  readonly issued_on: string;
  readonly valid_until: string;
  readonly total_minor: number;
  readonly currency: string;
}

export function quotesOfCustomer(db: DbOrTx, customerId: number): readonly CustomerQuote[] {
  return db
    .select({
      id: quote.id,
      enquiryId: enquiry.id,
      enquiry: sql<string>`${enquiry.number} || ' ' || ${enquiry.title}`,
      number: quote.number,
      revision: quote.revision,
      state: quote.state,
      issued_on: quote.issued_on,
      valid_until: quote.valid_until,
      total_minor: quote.total_minor,
      currency: quote.currency,
    })
    .from(quote)
    .innerJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .where(eq(enquiry.customer_id, customerId))
    .orderBy(desc(quote.id))
    .limit(ROWS_MOST)
    .all();
}

export interface CustomerBooking {
  readonly id: number;
  readonly enquiryId: number;
  readonly number: string;
  readonly quote: string;
  readonly state: string;
  readonly pieces: number;
  readonly starts_on: string | null;
  readonly ends_before: string | null;
}

export function bookingsOfCustomer(db: DbOrTx, customerId: number): readonly CustomerBooking[] {
  return db
    .select({
      id: booking.id,
      enquiryId: enquiry.id,
      number: booking.number,
      quote: sql<string>`${quote.number} || ' ' || ${quote.revision}`,
      state: booking.state,
      pieces: sql<number>`count(${bookingUnit.id})`,
      starts_on: sql<string | null>`min(${bookingUnit.starts_on})`,
      ends_before: sql<string | null>`max(${bookingUnit.ends_before})`,
    })
    .from(booking)
    .innerJoin(quote, eq(quote.id, booking.quote_id))
    .innerJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .leftJoin(bookingUnit, eq(bookingUnit.booking_id, booking.id))
    .where(eq(enquiry.customer_id, customerId))
    .groupBy(booking.id)
    .orderBy(desc(booking.id))
    .limit(ROWS_MOST)
    .all();
}
