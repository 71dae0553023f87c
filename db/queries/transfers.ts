/*
 * Reads and writes transfers between depots and what is on them.
 * Invariant: rows are written inside the transaction that decided on them.
 * Not here: deciding what may be sent (lib/services/stock).
 * Read next: ../schema/transfer.ts.
 */
import { and, asc, desc, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { transfer } from '../schema/transfer.ts';
import { transferItem } from '../schema/transfer-item.ts';
import { transferUnit } from '../schema/transfer-unit.ts';

/** What has arrived is looked back on this far. */
const MOST = 200;

export type TransferRow = typeof transfer.$inferSelect;
export type TransferUnitRow = typeof transferUnit.$inferSelect;
export type TransferItemRow = typeof transferItem.$inferSelect;

/** Those on the way first, then the newest. */
export function listTransfers(db: DbOrTx): readonly TransferRow[] {
  return db.select().from(transfer).orderBy(desc(transfer.state), desc(transfer.id)).limit(MOST).all();
}

export function findTransfer(db: DbOrTx, number: string): TransferRow | undefined {
  return db.select().from(transfer).where(eq(transfer.number, number)).get();
}

export function unitsOfTransfer(db: DbOrTx, id: number): readonly TransferUnitRow[] {
  return db
    .select()
    .from(transferUnit)
    .where(eq(transferUnit.transfer_id, id))
    .orderBy(asc(transferUnit.unit_serial))
    .all();
}

export function itemsOfTransfer(db: DbOrTx, id: number): readonly TransferItemRow[] {
  return db
    .select()
    .from(transferItem)
    .where(eq(transferItem.transfer_id, id))
    .orderBy(asc(transferItem.model_number))
    .all();
}

/** Every unit that is on its way. */
export function unitsOnTheWay(db: DbOrTx): readonly (TransferUnitRow & { readonly number: string })[] {
  return db
    .select({ row: transferUnit, number: transfer.number })
    .from(transferUnit)
    .innerJoin(transfer, eq(transfer.id, transferUnit.transfer_id))
    .where(eq(transferUnit.active, true))
    .all()
    .map(({ row, number }) => ({ ...row, number }));
}

export function transferOfUnit(db: DbOrTx, serial: string) {
  return db
    .select({ number: transfer.number, to: transfer.to_depot, dueOn: transfer.due_on })
    .from(transferUnit)
    .innerJoin(transfer, eq(transfer.id, transferUnit.transfer_id))
    .where(and(eq(transferUnit.unit_serial, serial), eq(transferUnit.active, true)))
    .get();
}

export function insertTransfer(db: DbOrTx, row: typeof transfer.$inferInsert): number {
  return Number(db.insert(transfer).values(row).returning({ id: transfer.id }).get().id);
}

export function insertTransferUnit(db: DbOrTx, row: typeof transferUnit.$inferInsert): void {
  db.insert(transferUnit).values(row).run();
}

export function insertTransferItem(db: DbOrTx, row: typeof transferItem.$inferInsert): void {
  db.insert(transferItem).values(row).run();
}

export function endTransferUnit(db: DbOrTx, id: number): void {
  db.update(transferUnit).set({ active: false }).where(eq(transferUnit.id, id)).run();
}

export function endTransferItem(db: DbOrTx, { id, model, arrived }: ItemArrival): void {
  db.update(transferItem)
    .set({ arrived })
    .where(and(eq(transferItem.transfer_id, id), eq(transferItem.model_number, model)))
    .run();
}

interface ItemArrival {
  readonly id: number;
  readonly model: string;
  readonly arrived: number;
}

export function changeTransfer(
  db: DbOrTx,
  { id, set }: { readonly id: number; readonly set: Partial<Omit<TransferRow, 'id'>> },
): void {
  db.update(transfer).set(set).where(eq(transfer.id, id)).run();
}
