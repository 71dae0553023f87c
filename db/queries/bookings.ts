/*
 * Reads and writes bookings of units.
 * Invariant: rows are written inside the transaction that decided on them.
 * Not here: deciding what is free (lib/stock).
 * Read next: ../schema/booking-unit.ts.
 */
import { eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingUnit } from '../schema/booking-unit.ts';

export type BookingRow = typeof booking.$inferSelect;
export type BookingUnitRow = typeof bookingUnit.$inferSelect;

export function activeBookingUnits(db: DbOrTx): readonly BookingUnitRow[] {
  return db.select().from(bookingUnit).where(eq(bookingUnit.active, true)).all();
}

export function bookingOfQuote(db: DbOrTx, quoteId: number): BookingRow | undefined {
  return db.select().from(booking).where(eq(booking.quote_id, quoteId)).get();
}

export function unitsOfBooking(db: DbOrTx, bookingId: number): readonly BookingUnitRow[] {
  return db.select().from(bookingUnit).where(eq(bookingUnit.booking_id, bookingId)).all();
}

export function insertBooking(db: DbOrTx, row: Omit<BookingRow, 'id'>): number {
  return Number(db.insert(booking).values(row).returning({ id: booking.id }).get().id);
}

export function insertBookingUnit(db: DbOrTx, row: Omit<BookingUnitRow, 'id'>): void {
  db.insert(bookingUnit).values(row).run();
}
