/*
 * Reads what the home page asks: what falls due, lapses, waits, is late, and what accepted quotes brought.
 * Invariant: reads only; every list is bounded.
 * Not here: what any of it means (lib/services/house/open-home.ts).
 * Read next: enquiries.ts, bookings.ts.
 */
import { and, asc, desc, eq, gte, inArray, isNotNull, lte, max, ne, notInArray, or, sql } from 'drizzle-orm';
import { HOLDING_STATES } from '#lib/stock/booking-life.ts';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { customer } from '../schema/customer.ts';
import { discountApproval } from '../schema/discount-approval.ts';
import { enquiry } from '../schema/enquiry.ts';
import { plan } from '../schema/plan.ts';
import { quote } from '../schema/quote.ts';
import { notDraft } from './find-enquiries.ts';

/** Nobody works through more than this on one page; what is beyond stands on the page of its own kind. */
const MOST = 200;
/** Plans are large: only those of the enquiries changed last are read for what they lack. */
const PLANS_READ = 40;
/** Of units in a booking: those that should have come back by their last day. */
const NOT_BACK = HOLDING_STATES.filter((state) => state !== 'back');
const ENDED = ['accepted', 'declined', 'lapsed'];

const NAMED = { enquiryId: enquiry.id, number: enquiry.number, title: enquiry.title, customer: customer.name };

export function enquiriesDue(db: DbOrTx, until: string) {
  return db
    .select({
      ...NAMED,
      state: enquiry.state,
      assignedTo: enquiry.assigned_to,
      assignedName: enquiry.assigned_name,
      dueOn: sql<string>`${enquiry.due_on}`,
    })
    .from(enquiry)
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(and(isNotNull(enquiry.due_on), lte(enquiry.due_on, until), notInArray(enquiry.state, [...ENDED, 'quoted'])))
    .orderBy(asc(enquiry.due_on), asc(enquiry.id))
    .limit(MOST)
    .all();
}

/** Newest revisions that nobody answered, by the day they are valid until. */
export function quotesValidUntil(db: DbOrTx, { from, until }: { readonly from: string; readonly until: string }) {
  const newest = db
    .select({ id: max(quote.id) })
    .from(quote)
    .groupBy(quote.number);
  return db
    .select({
      ...NAMED,
      quote: sql<string>`${quote.number} || ' ' || ${quote.revision}`,
      validUntil: quote.valid_until,
      total_minor: quote.total_minor,
      currency: quote.currency,
    })
    .from(quote)
    .innerJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(
      and(
        eq(quote.state, 'issued'),
        eq(enquiry.state, 'quoted'),
        inArray(quote.id, newest),
        gte(quote.valid_until, from),
        lte(quote.valid_until, until),
      ),
    )
    .orderBy(asc(quote.valid_until))
    .limit(MOST)
    .all();
}

export function approvalsWaiting(db: DbOrTx) {
  return db
    .select({
      ...NAMED,
      approvalId: discountApproval.id,
      slot: discountApproval.option_slot,
      reason: discountApproval.reason,
      askedBy: discountApproval.asked_by,
      askedByName: discountApproval.asked_by_name,
      askedAt: discountApproval.asked_at,
    })
    .from(discountApproval)
    .innerJoin(enquiry, eq(enquiry.id, discountApproval.enquiry_id))
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(and(eq(discountApproval.decided_at, ''), notInArray(enquiry.state, ENDED)))
    .orderBy(asc(discountApproval.id))
    .limit(MOST)
    .all();
}

/** Bookings with units that are not back though their last day is past. */
export function bookingsPast(db: DbOrTx, today: string) {
  return db
    .select({
      ...NAMED,
      booking: booking.number,
      endedBefore: sql<string>`max(${bookingUnit.ends_before})`,
      units: sql<number>`count(*)`,
    })
    .from(bookingUnit)
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .innerJoin(quote, eq(quote.id, booking.quote_id))
    .innerJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(and(inArray(bookingUnit.state, NOT_BACK), lte(bookingUnit.ends_before, today)))
    .groupBy(booking.id)
    .orderBy(sql`max(${bookingUnit.ends_before})`)
    .limit(MOST)
    .all();
}

/** Units of accepted quotes that are still to go out or to come back. */
export function unitsBookedAhead(db: DbOrTx, today: string) {
  return db
    .select({
      ...NAMED,
      booking: booking.number,
      serial: bookingUnit.unit_serial,
      starts_on: bookingUnit.starts_on,
      ends_before: bookingUnit.ends_before,
    })
    .from(bookingUnit)
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .innerJoin(quote, eq(quote.id, booking.quote_id))
    .innerJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(and(inArray(bookingUnit.state, [...HOLDING_STATES]), sql`${bookingUnit.ends_before} > ${today}`))
    .orderBy(asc(bookingUnit.starts_on), asc(bookingUnit.id))
    .limit(50 * MOST)
    .all();
}

/** Everything that was ever on hire inside the days, or is still to be. */
export function unitsBookedWithin(db: DbOrTx, window: { readonly starts_on: string; readonly ends_before: string }) {
  return db
    .select({ serial: bookingUnit.unit_serial, starts_on: bookingUnit.starts_on, ends_before: bookingUnit.ends_before })
    .from(bookingUnit)
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .where(
      and(
        // A unit that was given up before it left was never on hire.
        or(ne(bookingUnit.state, 'released'), isNotNull(bookingUnit.out_on)),
        or(ne(bookingUnit.state, 'swapped'), isNotNull(bookingUnit.out_on)),
        isNotNull(booking.quote_id),
        sql`${bookingUnit.starts_on} < ${window.ends_before} AND ${bookingUnit.ends_before} > ${window.starts_on}`,
      ),
    )
    .all();
}

export function acceptedQuotes(db: DbOrTx, from: string) {
  const startsOn = sql<string>`json_extract(${quote.frozen_json}, '$.site.startsOn')`;
  return db
    .select({
      startsOn,
      net_minor: sql<number>`json_extract(${quote.frozen_json}, '$.price.net_minor')`,
      currency: quote.currency,
    })
    .from(quote)
    .where(and(eq(quote.state, 'accepted'), gte(startsOn, from)))
    .all();
}

/** Open enquiries with the kits of their newest plan, by the preference chosen. */
export function plannedKits(db: DbOrTx) {
  const newest = db
    .select({ id: max(plan.id) })
    .from(plan)
    .where(eq(plan.option_slot, 0))
    .groupBy(plan.enquiry_id);
  return db
    .select({
      ...NAMED,
      startsOn: sql<string | null>`json_extract(${enquiry.site_json}, '$.starts_on')`,
      days: sql<number | null>`json_extract(${enquiry.site_json}, '$.days')`,
      kitsJson: sql<
        string | null
      >`(SELECT json_extract(p.value, '$.kits') FROM json_each(${plan.result_json}, '$.plans') AS p WHERE json_extract(p.value, '$.preference') = ${enquiry.preference})`,
    })
    .from(plan)
    .innerJoin(enquiry, eq(enquiry.id, plan.enquiry_id))
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(and(inArray(plan.id, newest), notInArray(enquiry.state, ENDED), notDraft()))
    .orderBy(desc(enquiry.updated_at))
    .limit(PLANS_READ)
    .all();
}
