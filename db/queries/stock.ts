/*
 * Reads and writes units, bays and shelves of counted pieces as the yard handles them.
 * Invariant: rows are written inside the transaction that decided on them.
 * Not here: the history (unit-events.ts), what is free (lib/stock).
 * Read next: ../schema/unit.ts, ../schema/bay.ts, ../schema/counted-shelf.ts.
 */
import { and, asc, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { bay } from '../schema/bay.ts';
import { countedShelf } from '../schema/counted-shelf.ts';
import { unit } from '../schema/unit.ts';
import type { UnitRow } from './equipment.ts';

export type BayRow = typeof bay.$inferSelect;
export type ShelfRow = typeof countedShelf.$inferSelect;

export interface BayAt {
  readonly depot: string;
  readonly bay: string;
}

export function findUnit(db: DbOrTx, serial: string): UnitRow | undefined {
  return db.select().from(unit).where(eq(unit.serial, serial)).get();
}

export function insertUnit(db: DbOrTx, row: typeof unit.$inferInsert): void {
  db.insert(unit).values(row).run();
}

interface UnitChange {
  readonly serial: string;
  readonly set: Partial<Omit<UnitRow, 'serial' | 'model_number'>>;
}

export function changeUnit(db: DbOrTx, { serial, set }: UnitChange): void {
  db.update(unit).set(set).where(eq(unit.serial, serial)).run();
}

/** In the order of the walk. */
export function listBays(db: DbOrTx): readonly BayRow[] {
  return db.select().from(bay).orderBy(asc(bay.depot), asc(bay.walk_order), asc(bay.code)).all();
}

export function findBay(db: DbOrTx, at: BayAt): BayRow | undefined {
  return db
    .select()
    .from(bay)
    .where(and(eq(bay.depot, at.depot), eq(bay.code, at.bay)))
    .get();
}

export function deleteBay(db: DbOrTx, at: BayAt): void {
  db.delete(bay)
    .where(and(eq(bay.depot, at.depot), eq(bay.code, at.bay)))
    .run();
}

interface ShelvesMove {
  readonly depot: string;
  readonly from: string;
  readonly to: string;
}

/** Boxes of counted pieces that stand in a bay are in another one, or in one of another name. */
export function moveShelves(db: DbOrTx, { depot, from, to }: ShelvesMove): void {
  db.update(countedShelf)
    .set({ bay: to })
    .where(and(eq(countedShelf.depot, depot), eq(countedShelf.bay, from)))
    .run();
}

export function saveBay(db: DbOrTx, row: typeof bay.$inferInsert): void {
  db.insert(bay)
    .values(row)
    .onConflictDoUpdate({ target: [bay.depot, bay.code], set: { walk_order: row.walk_order, note: row.note ?? '' } })
    .run();
}

export function listShelves(db: DbOrTx): readonly ShelfRow[] {
  return db.select().from(countedShelf).orderBy(asc(countedShelf.model_number), asc(countedShelf.depot)).all();
}

export function shelvesOf(db: DbOrTx, model: string): readonly ShelfRow[] {
  return db
    .select()
    .from(countedShelf)
    .where(eq(countedShelf.model_number, model))
    .orderBy(asc(countedShelf.depot))
    .all();
}

interface ShelfAt {
  readonly model: string;
  readonly depot: string;
}

export function findShelf(db: DbOrTx, { model, depot }: ShelfAt): ShelfRow | undefined {
  return db
    .select()
    .from(countedShelf)
    .where(and(eq(countedShelf.model_number, model), eq(countedShelf.depot, depot)))
    .get();
}

export function saveShelf(db: DbOrTx, row: typeof countedShelf.$inferInsert): void {
  db.insert(countedShelf)
    .values(row)
    .onConflictDoUpdate({
      target: [countedShelf.model_number, countedShelf.depot],
      set: { count: row.count, ...(row.bay === undefined ? {} : { bay: row.bay }) },
    })
    .run();
}
