/*
 * Reads and writes the house row and its number series.
 * Invariant: a number is handed out once, inside the transaction that uses it.
 * Not here: what a number looks like (lib/services).
 * Read next: ../schema/house.ts.
 */
import { eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { house } from '../schema/house.ts';
import { numberSeries } from '../schema/number-series.ts';

export function readHouse(db: DbOrTx): string | undefined {
  return db.select({ facts: house.facts_json }).from(house).where(eq(house.id, 1)).get()?.facts;
}

export function writeHouse(db: DbOrTx, row: { readonly factsJson: string; readonly at: string }): void {
  db.insert(house)
    .values({ id: 1, facts_json: row.factsJson, updated_at: row.at })
    .onConflictDoUpdate({ target: house.id, set: { facts_json: row.factsJson, updated_at: row.at } })
    .run();
}

/** The number that takeNumber would hand out; it is not taken. */
export function peekNumber(db: DbOrTx, name: string): number {
  return db.select({ next: numberSeries.next }).from(numberSeries).where(eq(numberSeries.name, name)).get()?.next ?? 1;
}

export function takeNumber(db: DbOrTx, name: string): number {
  const next = peekNumber(db, name);
  db.insert(numberSeries)
    .values({ name, next: next + 1 })
    .onConflictDoUpdate({ target: numberSeries.name, set: { next: next + 1 } })
    .run();
  return next;
}
