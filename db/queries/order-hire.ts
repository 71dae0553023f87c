/*
 * What an order became: its newest booking whatever became of it, and what its owner wished of the hire.
 * Invariant: a wish is settled once; asking anew replaces the one that waits.
 * Not here: bookings as the yard reads them (bookings.ts).
 * Read next: ../schema/extension-wish.ts.
 */
import { and, asc, desc, eq, gt, inArray } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { customer } from '../schema/customer.ts';
import { enquiry } from '../schema/enquiry.ts';
import { extensionWish } from '../schema/extension-wish.ts';
import { offHireNotice } from '../schema/off-hire-notice.ts';
import { offHireUnit } from '../schema/off-hire-unit.ts';
import { quote } from '../schema/quote.ts';
import type { BookingRow } from './bookings.ts';

export type WishRow = typeof extensionWish.$inferSelect;

export function newestBookingOfEnquiry(db: DbOrTx, enquiryId: number): BookingRow | undefined {
  return db
    .select({ row: booking })
    .from(booking)
    .innerJoin(quote, eq(quote.id, booking.quote_id))
    .where(eq(quote.enquiry_id, enquiryId))
    .orderBy(desc(booking.id))
    .limit(1)
    .get()?.row;
}

/** The newest first. */
export function wishesOfBooking(db: DbOrTx, bookingId: number): readonly WishRow[] {
  return db
    .select()
    .from(extensionWish)
    .where(eq(extensionWish.booking_id, bookingId))
    .orderBy(desc(extensionWish.id))
    .all();
}

export function insertWish(db: DbOrTx, row: Omit<typeof extensionWish.$inferInsert, 'id'>): void {
  db.insert(extensionWish).values(row).run();
}

type Settling = Pick<WishRow, 'settled' | 'settled_at' | 'settled_by' | 'answer'>;

/** Answers whether one waited. */
export function settleWish(
  db: DbOrTx,
  { bookingId, set }: { readonly bookingId: number; readonly set: Settling },
): boolean {
  const waits = and(eq(extensionWish.booking_id, bookingId), eq(extensionWish.settled, ''));
  return db.update(extensionWish).set(set).where(waits).run().changes > 0;
}

export interface AskedByLink {
  readonly enquiryId: number;
  readonly number: string;
  readonly title: string;
  readonly customer: string;
  readonly booking: string;
  readonly at: string;
}

const OF_ENQUIRY = {
  enquiryId: enquiry.id,
  number: enquiry.number,
  title: enquiry.title,
  customer: customer.name,
  booking: booking.number,
};

/** Extensions that wait for a word, and for which the units of their booking do not stay long enough yet. */
export function wishesWaiting(db: DbOrTx): readonly (AskedByLink & { readonly endsBefore: string })[] {
  return db
    .select({ ...OF_ENQUIRY, at: extensionWish.asked_at, endsBefore: extensionWish.ends_before })
    .from(extensionWish)
    .innerJoin(booking, eq(booking.id, extensionWish.booking_id))
    .innerJoin(quote, eq(quote.id, booking.quote_id))
    .innerJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .innerJoin(bookingUnit, eq(bookingUnit.booking_id, booking.id))
    .where(
      and(
        eq(extensionWish.settled, ''),
        inArray(bookingUnit.state, ['held', 'allocated', 'picked', 'out']),
        gt(extensionWish.ends_before, bookingUnit.ends_before),
      ),
    )
    .groupBy(extensionWish.id)
    .orderBy(asc(extensionWish.id))
    .all();
}

/** Off-hire notices that owners gave by their link, of which something is still out. */
export function noticesByLink(
  db: DbOrTx,
  whoId: string,
): readonly (AskedByLink & { readonly notice: string; readonly saidBy: string })[] {
  return db
    .select({
      ...OF_ENQUIRY,
      at: offHireNotice.noticed_at,
      notice: offHireNotice.number,
      saidBy: offHireNotice.said_by,
    })
    .from(offHireNotice)
    .innerJoin(booking, eq(booking.id, offHireNotice.booking_id))
    .innerJoin(quote, eq(quote.id, booking.quote_id))
    .innerJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .innerJoin(offHireUnit, eq(offHireUnit.notice_id, offHireNotice.id))
    .innerJoin(bookingUnit, eq(bookingUnit.id, offHireUnit.booking_unit_id))
    .where(and(eq(offHireNotice.who_id, whoId), eq(bookingUnit.state, 'out')))
    .groupBy(offHireNotice.id)
    .orderBy(asc(offHireNotice.id))
    .all();
}
