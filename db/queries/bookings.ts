/*
 * Reads and writes bookings of units.
 * Invariant: rows are written inside the transaction that decided on them.
 * Not here: deciding what is free (lib/stock).
 * Read next: ../schema/booking-unit.ts.
 */
import { and, eq, isNull, ne, or } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { quote } from '../schema/quote.ts';
import { unit } from '../schema/unit.ts';

const CANCELLED = 'cancelled';

export type BookingRow = typeof booking.$inferSelect;
export type BookingUnitRow = typeof bookingUnit.$inferSelect;

export function activeBookingUnits(db: DbOrTx): readonly BookingUnitRow[] {
  return db.select().from(bookingUnit).where(eq(bookingUnit.active, true)).all();
}

/** What is taken by everything but the quotes of one enquiry: its own units stand free to it. */
export function activeBookingUnitsBeside(db: DbOrTx, enquiryId: number): readonly BookingUnitRow[] {
  return db
    .select({ row: bookingUnit })
    .from(bookingUnit)
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .where(and(eq(bookingUnit.active, true), or(isNull(quote.id), ne(quote.enquiry_id, enquiryId))))
    .all()
    .map(({ row }) => row);
}

/** Bookings of all revisions of an enquiry's quote, but those that were cancelled. */
export function bookingsOfEnquiry(db: DbOrTx, enquiryId: number): readonly BookingRow[] {
  return db
    .select({ row: booking })
    .from(booking)
    .innerJoin(quote, eq(quote.id, booking.quote_id))
    .where(and(eq(quote.enquiry_id, enquiryId), ne(booking.state, CANCELLED)))
    .all()
    .map(({ row }) => row);
}

export interface BookedUnit {
  readonly serial: string;
  readonly model: string;
  readonly starts_on: string;
  readonly ends_before: string;
}

/** The units a booking holds, in the order they were chosen. */
export function bookedUnits(db: DbOrTx, bookingId: number): readonly BookedUnit[] {
  return db
    .select({
      serial: bookingUnit.unit_serial,
      model: unit.model_number,
      starts_on: bookingUnit.starts_on,
      ends_before: bookingUnit.ends_before,
    })
    .from(bookingUnit)
    .innerJoin(unit, eq(unit.serial, bookingUnit.unit_serial))
    .where(and(eq(bookingUnit.booking_id, bookingId), eq(bookingUnit.active, true)))
    .orderBy(bookingUnit.id)
    .all();
}

/** The one that stands; a quote may have had others that were cancelled. */
export function bookingOfQuote(db: DbOrTx, quoteId: number): BookingRow | undefined {
  return db
    .select()
    .from(booking)
    .where(and(eq(booking.quote_id, quoteId), ne(booking.state, CANCELLED)))
    .get();
}

/** Sets its units free; the rows stay as what was once booked. */
export function cancelBooking(db: DbOrTx, { id, note }: { readonly id: number; readonly note: string }): void {
  db.update(booking).set({ state: CANCELLED, note, held_until: null }).where(eq(booking.id, id)).run();
  db.update(bookingUnit).set({ active: false }).where(eq(bookingUnit.booking_id, id)).run();
}

export function insertBooking(db: DbOrTx, row: Omit<BookingRow, 'id'>): number {
  return Number(db.insert(booking).values(row).returning({ id: booking.id }).get().id);
}

export function insertBookingUnit(db: DbOrTx, row: Omit<BookingUnitRow, 'id'>): void {
  db.insert(bookingUnit).values(row).run();
}
