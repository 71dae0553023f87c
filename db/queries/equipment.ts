/*
 * Reads and writes models and units.
 * Invariant: lists come in order of number and serial.
 * Not here: what is free on which dates (bookings.ts, lib/stock).
 * Read next: ../schema/model.ts, ../schema/unit.ts.
 */
import { and, asc, eq } from 'drizzle-orm';
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

export function findModel(db: DbOrTx, number: string): ModelRow | undefined {
  return db.select().from(model).where(eq(model.number, number)).get();
}

export function insertModels(db: DbOrTx, rows: readonly (typeof model.$inferInsert)[]): void {
  for (const row of rows) db.insert(model).values(row).run();
}

interface ModelChange {
  readonly number: string;
  /** The version that the change was made from. */
  readonly version: number;
  readonly set: Partial<Pick<ModelRow, 'name' | 'facts_json' | 'counted_stock' | 'retired_on'>>;
}

/** False where somebody changed the model since that version. */
export function changeModel(db: DbOrTx, { number, version, set }: ModelChange): boolean {
  const done = db
    .update(model)
    .set({ ...set, version: version + 1 })
    .where(and(eq(model.number, number), eq(model.version, version)))
    .run();
  return done.changes === 1;
}

export function insertUnits(db: DbOrTx, rows: readonly (typeof unit.$inferInsert)[]): void {
  for (const row of rows) db.insert(unit).values(row).run();
}
