/*
 * Reads and adds what happened to bookings: moves, extensions and off-hire notices.
 * Invariant: only ever added to; the newest stands last.
 * Not here: the bookings themselves (bookings.ts).
 * Read next: ../schema/booking-move.ts, ../schema/off-hire-notice.ts.
 */
import { eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { bookingMove } from '../schema/booking-move.ts';

export type BookingMoveRow = typeof bookingMove.$inferSelect;

export function addBookingMove(db: DbOrTx, row: typeof bookingMove.$inferInsert): void {
  db.insert(bookingMove).values(row).run();
}

export function movesOfBooking(db: DbOrTx, bookingId: number): readonly BookingMoveRow[] {
  return db.select().from(bookingMove).where(eq(bookingMove.booking_id, bookingId)).orderBy(bookingMove.id).all();
}
