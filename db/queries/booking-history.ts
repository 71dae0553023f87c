/*
 * Reads and adds what happened to bookings: moves, extensions and off-hire notices.
 * Invariant: only ever added to; the newest stands last.
 * Not here: the bookings themselves (bookings.ts).
 * Read next: ../schema/booking-move.ts, ../schema/off-hire-notice.ts.
 */
import { eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { bookingExtension } from '../schema/booking-extension.ts';
import { bookingMove } from '../schema/booking-move.ts';
import { offHireNotice } from '../schema/off-hire-notice.ts';
import { offHireUnit } from '../schema/off-hire-unit.ts';

export type BookingMoveRow = typeof bookingMove.$inferSelect;
export type BookingExtensionRow = typeof bookingExtension.$inferSelect;
export type OffHireNoticeRow = typeof offHireNotice.$inferSelect;

export function addBookingMove(db: DbOrTx, row: typeof bookingMove.$inferInsert): void {
  db.insert(bookingMove).values(row).run();
}

export function movesOfBooking(db: DbOrTx, bookingId: number): readonly BookingMoveRow[] {
  return db.select().from(bookingMove).where(eq(bookingMove.booking_id, bookingId)).orderBy(bookingMove.id).all();
}

export function addExtension(db: DbOrTx, row: typeof bookingExtension.$inferInsert): void {
  db.insert(bookingExtension).values(row).run();
}

export function extensionsOfBooking(db: DbOrTx, bookingId: number): readonly BookingExtensionRow[] {
  return db
    .select()
    .from(bookingExtension)
    .where(eq(bookingExtension.booking_id, bookingId))
    .orderBy(bookingExtension.id)
    .all();
}

interface NoticeToAdd {
  readonly row: typeof offHireNotice.$inferInsert;
  readonly unitIds: readonly number[];
}

export function insertNotice(db: DbOrTx, { row, unitIds }: NoticeToAdd): void {
  const { id } = db.insert(offHireNotice).values(row).returning({ id: offHireNotice.id }).get();
  for (const unit of unitIds) db.insert(offHireUnit).values({ notice_id: id, booking_unit_id: unit }).run();
}

export function noticesOfBooking(db: DbOrTx, bookingId: number): readonly OffHireNoticeRow[] {
  return db.select().from(offHireNotice).where(eq(offHireNotice.booking_id, bookingId)).orderBy(offHireNotice.id).all();
}

/** The notice that names each unit of a booking, by the id of its row. */
export function noticedUnits(db: DbOrTx, bookingId: number): ReadonlyMap<number, OffHireNoticeRow> {
  const rows = db
    .select({ unit: offHireUnit.booking_unit_id, notice: offHireNotice })
    .from(offHireUnit)
    .innerJoin(offHireNotice, eq(offHireNotice.id, offHireUnit.notice_id))
    .where(eq(offHireNotice.booking_id, bookingId))
    .all();
  return new Map(rows.map(({ unit, notice }) => [unit, notice]));
}
