/*
 * Reads and writes returns: what came back, piece by piece, counted pieces and photographs.
 * Invariant: rows are written inside the transaction that decided on them; a photograph's bytes are never written twice.
 * Not here: charges and notes (return-notes.ts), work orders (work-orders.ts).
 * Read next: ../schema/equipment-return.ts, ../schema/return-piece.ts.
 */
import { and, asc, eq, inArray, isNull } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { equipmentReturn } from '../schema/equipment-return.ts';
import { model } from '../schema/model.ts';
import { returnCount } from '../schema/return-count.ts';
import { returnPhoto } from '../schema/return-photo.ts';
import { returnPiece } from '../schema/return-piece.ts';
import { unit } from '../schema/unit.ts';

export type ReturnRow = typeof equipmentReturn.$inferSelect;
export type PieceRow = typeof returnPiece.$inferSelect;
export type PhotoRow = typeof returnPhoto.$inferSelect;

export function returnsOfBooking(db: DbOrTx, bookingId: number): readonly ReturnRow[] {
  return db
    .select()
    .from(equipmentReturn)
    .where(eq(equipmentReturn.booking_id, bookingId))
    .orderBy(asc(equipmentReturn.sequence))
    .all();
}

export function findReturn(db: DbOrTx, id: number): ReturnRow | undefined {
  return db.select().from(equipmentReturn).where(eq(equipmentReturn.id, id)).get();
}

export function insertReturn(db: DbOrTx, row: typeof equipmentReturn.$inferInsert): ReturnRow {
  return db.insert(equipmentReturn).values(row).returning().get();
}

/** A piece that was checked in, with the unit and model it is. */
export interface CheckedPiece extends PieceRow {
  readonly serial: string;
  readonly model: string;
  readonly name: string;
}

const PIECE = { row: returnPiece, serial: bookingUnit.unit_serial, model: unit.model_number, name: model.name };

/** Those that count: what was undone is left out. */
export function piecesOfBooking(db: DbOrTx, bookingId: number): readonly CheckedPiece[] {
  return db
    .select(PIECE)
    .from(returnPiece)
    .innerJoin(bookingUnit, eq(bookingUnit.id, returnPiece.booking_unit_id))
    .innerJoin(unit, eq(unit.serial, bookingUnit.unit_serial))
    .innerJoin(model, eq(model.number, unit.model_number))
    .where(and(eq(bookingUnit.booking_id, bookingId), isNull(returnPiece.undone_at)))
    .orderBy(asc(returnPiece.id))
    .all()
    .map(({ row, ...named }) => ({ ...row, ...named }));
}

export function findPiece(db: DbOrTx, id: number): PieceRow | undefined {
  return db.select().from(returnPiece).where(eq(returnPiece.id, id)).get();
}

export function insertPiece(db: DbOrTx, row: typeof returnPiece.$inferInsert): number {
  return db.insert(returnPiece).values(row).returning({ id: returnPiece.id }).get().id;
}

interface PieceChange {
  readonly id: number;
  readonly set: Partial<Omit<PieceRow, 'id'>>;
}

export function changePiece(db: DbOrTx, { id, set }: PieceChange): void {
  db.update(returnPiece).set(set).where(eq(returnPiece.id, id)).run();
}

export interface BackCount {
  readonly returnId: number;
  readonly model: string;
  readonly back: number;
  readonly unused: number;
  readonly cause: string;
  readonly cause_words: string;
}

export function countsOfBooking(db: DbOrTx, bookingId: number): readonly BackCount[] {
  return db
    .select({
      returnId: returnCount.return_id,
      model: returnCount.model_number,
      back: returnCount.back,
      unused: returnCount.unused,
      cause: returnCount.cause,
      cause_words: returnCount.cause_words,
    })
    .from(returnCount)
    .innerJoin(equipmentReturn, eq(equipmentReturn.id, returnCount.return_id))
    .where(eq(equipmentReturn.booking_id, bookingId))
    .orderBy(asc(returnCount.return_id), asc(returnCount.model_number))
    .all();
}

export function putCount(db: DbOrTx, row: typeof returnCount.$inferInsert): void {
  const { back, unused, who_id, who, at } = row;
  db.insert(returnCount)
    .values(row)
    .onConflictDoUpdate({
      target: [returnCount.return_id, returnCount.model_number],
      set: { back, unused: unused ?? 0, who_id, who, at },
    })
    .run();
}

/** A row to hold what is said of pieces none of which came back with this return. */
export function ensureCount(db: DbOrTx, row: typeof returnCount.$inferInsert): void {
  db.insert(returnCount).values(row).onConflictDoNothing().run();
}

interface CountCause {
  readonly returnId: number;
  readonly model: string;
  readonly cause: string;
  readonly cause_words: string;
}

export function changeCountCause(db: DbOrTx, { returnId, model: number, ...set }: CountCause): void {
  db.update(returnCount)
    .set(set)
    .where(and(eq(returnCount.return_id, returnId), eq(returnCount.model_number, number)))
    .run();
}

export type PhotoFacts = Omit<PhotoRow, 'bytes'>;

const PHOTO = {
  id: returnPhoto.id,
  piece_id: returnPhoto.piece_id,
  file_name: returnPhoto.file_name,
  mime: returnPhoto.mime,
  size_bytes: returnPhoto.size_bytes,
  sha256: returnPhoto.sha256,
  added_at: returnPhoto.added_at,
  who_id: returnPhoto.who_id,
  who: returnPhoto.who,
  removed_at: returnPhoto.removed_at,
};

export function photosOfPieces(db: DbOrTx, pieces: readonly number[]): readonly PhotoFacts[] {
  return db
    .select(PHOTO)
    .from(returnPhoto)
    .where(inArray(returnPhoto.piece_id, [...pieces]))
    .orderBy(asc(returnPhoto.id))
    .all();
}

export function findPhoto(db: DbOrTx, id: number): PhotoRow | undefined {
  return db.select().from(returnPhoto).where(eq(returnPhoto.id, id)).get();
}

export function insertPhoto(db: DbOrTx, row: typeof returnPhoto.$inferInsert): number {
  return db.insert(returnPhoto).values(row).returning({ id: returnPhoto.id }).get().id;
}

export function putPhotoAway(db: DbOrTx, { id, at }: { readonly id: number; readonly at: string | null }): void {
  db.update(returnPhoto).set({ removed_at: at }).where(eq(returnPhoto.id, id)).run();
}
