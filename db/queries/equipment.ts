/*
 * Reads and writes models and units.
 * Invariant: lists come in order of number and serial.
 * Not here: what is free on which dates (bookings.ts, lib/stock).
 * Read next: ../schema/model.ts, ../schema/unit.ts.
 */
import { asc } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { model } from '../schema/model.ts';
import { unit } from '../schema/unit.ts';

export type ModelRow = typeof model.$inferSelect;
export type UnitRow = typeof unit.$inferSelect;

export function listModels(db: DbOrTx): readonly ModelRow[] {
  return db.select().from(model).orderBy(asc(model.number)).all();
}

export function listUnits(db: DbOrTx): readonly UnitRow[] {
  return db.select().from(unit).orderBy(asc(unit.serial)).all();
}

export function insertModels(db: DbOrTx, rows: readonly ModelRow[]): void {
  for (const row of rows) db.insert(model).values(row).run();
}

export function insertUnits(db: DbOrTx, rows: readonly UnitRow[]): void {
  for (const row of rows) db.insert(unit).values(row).run();
}
