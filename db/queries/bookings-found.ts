/*
 * Finds bookings with whose they are: a page of the list, and one by its number.
 * Invariant: reads only; every list is bounded and comes in order of its first day.
 * Not here: the rows of one booking (bookings.ts).
 * Read next: bookings.ts, booking-history.ts.
 */
import { and, asc, count, desc, eq, gt, inArray, like, lte, or, type SQL, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { customer } from '../schema/customer.ts';
import { enquiry } from '../schema/enquiry.ts';
import { quote } from '../schema/quote.ts';

/** What stands for the booking today: neither swapped nor given up; of one that ended, all it had. */
const ITS = sql`(${bookingUnit.state} NOT IN ('swapped', 'released') OR ${booking.state} IN ('cancelled', 'lapsed'))`;
const STARTS_ON = sql<string | null>`min(CASE WHEN ${ITS} THEN ${bookingUnit.starts_on} END)`;
const ENDS_BEFORE = sql<string | null>`max(CASE WHEN ${ITS} THEN ${bookingUnit.ends_before} END)`;

/** That of the quote, or the one for whom it was booked without. */
const ITS_CUSTOMER = sql`${customer.id} = coalesce(${enquiry.customer_id}, ${booking.customer_id})`;

const WHOSE = {
  number: booking.number,
  state: booking.state,
  heldUntil: booking.held_until,
  depot: booking.depot,
  orderNumber: booking.order_number,
  enquiryId: sql<number | null>`${enquiry.id}`,
  enquiry: sql<string | null>`${enquiry.number}`,
  title: sql<string | null>`coalesce(${enquiry.title}, nullif(${booking.purpose}, ''))`,
  customer: sql<string | null>`${customer.name}`,
  quote: sql<string | null>`${quote.number} || ' ' || ${quote.revision}`,
};

export interface FoundBooking {
  readonly number: string;
  readonly state: string;
  readonly heldUntil: string | null;
  readonly depot: string;
  readonly orderNumber: string;
  readonly enquiryId: number | null;
  readonly enquiry: string | null;
  readonly title: string | null;
  readonly customer: string | null;
  readonly quote: string | null;
  readonly startsOn: string | null;
  readonly endsBefore: string | null;
  readonly units: number;
  readonly out: number;
}

export interface BookingsAsked {
  readonly states: readonly string[];
  /** In the number, the customer, the title, the order number or a serial number. */
  readonly words: string;
  /** Runs on this day or after; empty where not narrowed. */
  readonly from: string;
  /** Begins on this day or before. */
  readonly until: string;
  /** Only those with units that are out past their last day. */
  readonly lateOn: string | null;
}

export function bookingsPage(
  db: DbOrTx,
  { asked, page, size }: { readonly asked: BookingsAsked; readonly page: number; readonly size: number },
): { readonly rows: readonly FoundBooking[]; readonly total: number } {
  const where = and(...conditions(asked));
  const total = db
    .select({ total: count() })
    .from(booking)
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .leftJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .leftJoin(customer, ITS_CUSTOMER)
    .where(where)
    .get();
  const rows = joined(db)
    .where(where)
    .groupBy(booking.id)
    .orderBy(asc(STARTS_ON), desc(booking.id))
    .limit(size)
    .offset((page - 1) * size)
    .all();
  return { rows, total: total?.total ?? 0 };
}

export function bookingFound(db: DbOrTx, number: string): FoundBooking | undefined {
  return joined(db).where(eq(booking.number, number)).groupBy(booking.id).get();
}

/** Whose booking it is; empty where it is nobody's. */
export function customerOfBooking(db: DbOrTx, number: string): string {
  return bookingFound(db, number)?.customer ?? '';
}

function joined(db: DbOrTx) {
  return db
    .select({
      ...WHOSE,
      startsOn: STARTS_ON,
      endsBefore: ENDS_BEFORE,
      units: sql<number>`count(CASE WHEN ${ITS} THEN 1 END)`,
      out: sql<number>`count(CASE WHEN ${bookingUnit.state} = 'out' THEN 1 END)`,
    })
    .from(booking)
    .leftJoin(bookingUnit, eq(bookingUnit.booking_id, booking.id))
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .leftJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .leftJoin(customer, ITS_CUSTOMER)
    .$dynamic();
}

function conditions({ states, words, from, until, lateOn }: BookingsAsked): readonly (SQL | undefined)[] {
  const holding = `%${words.replaceAll('%', '_')}%`;
  return [
    states.length === 0 ? undefined : inArray(booking.state, [...states]),
    words === ''
      ? undefined
      : or(
          like(booking.number, holding),
          like(customer.name, holding),
          like(enquiry.title, holding),
          like(booking.order_number, holding),
          withUnit(like(bookingUnit.unit_serial, holding)),
        ),
    from === '' ? undefined : withUnit(gt(bookingUnit.ends_before, from)),
    until === '' ? undefined : withUnit(lte(bookingUnit.starts_on, until)),
    lateOn === null ? undefined : withUnit(and(eq(bookingUnit.state, 'out'), lte(bookingUnit.ends_before, lateOn))),
  ];
}

function withUnit(which: SQL | undefined): SQL {
  return sql`EXISTS (SELECT 1 FROM ${bookingUnit} WHERE ${bookingUnit.booking_id} = ${booking.id} AND ${which})`;
}
