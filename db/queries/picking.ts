/*
 * Reads and writes what picking and packing leave behind: scans with their answers, checks, cases and what lies in them.
 * Invariant: rows are written inside the transaction that decided on them.
 * Not here: bookings and their units (bookings.ts).
 * Read next: ../schema/yard-scan.ts, ../schema/pick-check.ts, ../schema/load-case.ts.
 */
import { and, asc, eq, gt, inArray, lt, ne } from 'drizzle-orm';
import type { DateRange } from '#lib/kernel/date-range.ts';
import { HOLDING_STATES } from '#lib/stock/booking-life.ts';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { loadCase } from '../schema/load-case.ts';
import { loadPiece } from '../schema/load-piece.ts';
import { pickCheck } from '../schema/pick-check.ts';
import { yardScan } from '../schema/yard-scan.ts';

export type YardScanRow = typeof yardScan.$inferSelect;
export type PickCheckRow = typeof pickCheck.$inferSelect;
export type LoadCaseRow = typeof loadCase.$inferSelect;
export type LoadPieceRow = typeof loadPiece.$inferSelect;

export function findScan(db: DbOrTx, key: string): YardScanRow | undefined {
  return db.select().from(yardScan).where(eq(yardScan.key, key)).get();
}

export function insertScan(db: DbOrTx, row: typeof yardScan.$inferInsert): void {
  db.insert(yardScan).values(row).run();
}

/** The oldest first. */
export function checksOfBooking(db: DbOrTx, bookingId: number): readonly PickCheckRow[] {
  return db.select().from(pickCheck).where(eq(pickCheck.booking_id, bookingId)).orderBy(asc(pickCheck.id)).all();
}

export function insertCheck(db: DbOrTx, row: typeof pickCheck.$inferInsert): void {
  db.insert(pickCheck).values(row).run();
}

export function casesOfBooking(db: DbOrTx, bookingId: number): readonly LoadCaseRow[] {
  return db.select().from(loadCase).where(eq(loadCase.booking_id, bookingId)).orderBy(asc(loadCase.number)).all();
}

export function insertCase(db: DbOrTx, row: typeof loadCase.$inferInsert): void {
  db.insert(loadCase).values(row).run();
}

export function piecesOfLoad(db: DbOrTx, bookingId: number): readonly LoadPieceRow[] {
  return db.select().from(loadPiece).where(eq(loadPiece.booking_id, bookingId)).orderBy(asc(loadPiece.id)).all();
}

export function insertLoadPiece(db: DbOrTx, row: typeof loadPiece.$inferInsert): void {
  db.insert(loadPiece).values(row).run();
}

interface PieceChange {
  readonly id: number;
  readonly set: Partial<Pick<LoadPieceRow, 'case_number' | 'count' | 'packed_at' | 'packed_by'>>;
}

export function changeLoadPiece(db: DbOrTx, { id, set }: PieceChange): void {
  db.update(loadPiece).set(set).where(eq(loadPiece.id, id)).run();
}

export function removeLoadPiece(db: DbOrTx, at: { readonly bookingId: number; readonly id: number }): void {
  db.delete(loadPiece)
    .where(and(eq(loadPiece.booking_id, at.bookingId), eq(loadPiece.id, at.id)))
    .run();
}

/** All cases and what lies in them: packing begins anew. */
export function emptyLoad(db: DbOrTx, bookingId: number): void {
  db.delete(loadPiece).where(eq(loadPiece.booking_id, bookingId)).run();
  db.delete(loadCase).where(eq(loadCase.booking_id, bookingId)).run();
}

interface HeldBy {
  readonly serial: string;
  readonly window: DateRange;
  /** Id of the booking that asks. */
  readonly beside: number;
}

/** Number of another booking that holds the unit on any of these days. */
export function bookingHolding(db: DbOrTx, { serial, window, beside }: HeldBy): string | undefined {
  return db
    .select({ number: booking.number })
    .from(bookingUnit)
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .where(
      and(
        eq(bookingUnit.unit_serial, serial),
        ne(bookingUnit.booking_id, beside),
        inArray(bookingUnit.state, [...HOLDING_STATES]),
        lt(bookingUnit.starts_on, window.ends_before),
        gt(bookingUnit.free_again_on, window.starts_on),
      ),
    )
    .orderBy(asc(bookingUnit.starts_on))
    .get()?.number;
}
