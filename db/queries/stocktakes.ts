/*
 * Reads and writes stocktakes and what was scanned and counted in them.
 * Invariant: rows are written inside the transaction that decided on them.
 * Not here: what the findings lead to (lib/services/stock).
 * Read next: ../schema/stocktake.ts.
 */
import { and, asc, desc, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { stocktake } from '../schema/stocktake.ts';
import { stocktakeItem } from '../schema/stocktake-item.ts';
import { stocktakeScan } from '../schema/stocktake-scan.ts';

/** Nobody looks further back on one page. */
const MOST = 100;

export type StocktakeRow = typeof stocktake.$inferSelect;
export type StocktakeScanRow = typeof stocktakeScan.$inferSelect;
export type StocktakeItemRow = typeof stocktakeItem.$inferSelect;

export function listStocktakes(db: DbOrTx): readonly StocktakeRow[] {
  return db.select().from(stocktake).orderBy(desc(stocktake.id)).limit(MOST).all();
}

export function findStocktake(db: DbOrTx, number: string): StocktakeRow | undefined {
  return db.select().from(stocktake).where(eq(stocktake.number, number)).get();
}

export function openStocktakeOf(db: DbOrTx, depot: string): StocktakeRow | undefined {
  return db
    .select()
    .from(stocktake)
    .where(and(eq(stocktake.depot, depot), eq(stocktake.state, 'open')))
    .get();
}

export function insertStocktake(db: DbOrTx, row: typeof stocktake.$inferInsert): void {
  db.insert(stocktake).values(row).run();
}

export function changeStocktake(
  db: DbOrTx,
  { id, set }: { readonly id: number; readonly set: Partial<Omit<StocktakeRow, 'id'>> },
): void {
  db.update(stocktake).set(set).where(eq(stocktake.id, id)).run();
}

/** The last scanned first. */
export function scansOf(db: DbOrTx, id: number): readonly StocktakeScanRow[] {
  return db
    .select()
    .from(stocktakeScan)
    .where(eq(stocktakeScan.stocktake_id, id))
    .orderBy(desc(stocktakeScan.at), asc(stocktakeScan.unit_serial))
    .all();
}

export function saveScan(db: DbOrTx, row: typeof stocktakeScan.$inferInsert): void {
  db.insert(stocktakeScan)
    .values(row)
    .onConflictDoUpdate({
      target: [stocktakeScan.stocktake_id, stocktakeScan.unit_serial],
      set: { bay: row.bay, at: row.at, who_id: row.who_id, who: row.who },
    })
    .run();
}

export function removeScan(db: DbOrTx, { id, serial }: { readonly id: number; readonly serial: string }): boolean {
  const where = and(eq(stocktakeScan.stocktake_id, id), eq(stocktakeScan.unit_serial, serial));
  return db.delete(stocktakeScan).where(where).run().changes === 1;
}

export function countsOf(db: DbOrTx, id: number): readonly StocktakeItemRow[] {
  return db
    .select()
    .from(stocktakeItem)
    .where(eq(stocktakeItem.stocktake_id, id))
    .orderBy(asc(stocktakeItem.model_number))
    .all();
}

export function saveCountOf(db: DbOrTx, row: typeof stocktakeItem.$inferInsert): void {
  db.insert(stocktakeItem)
    .values(row)
    .onConflictDoUpdate({
      target: [stocktakeItem.stocktake_id, stocktakeItem.model_number],
      set: { count: row.count, at: row.at, who_id: row.who_id, who: row.who },
    })
    .run();
}
