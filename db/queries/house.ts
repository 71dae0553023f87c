/*
 * Reads and writes the house row and its number series.
 * Invariant: a number is handed out once, inside the transaction that uses it.
 * Not here: what a number looks like (lib/services).
 * Read next: ../schema/house.ts.
 */
import { and, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { house } from '../schema/house.ts';
import { numberSeries } from '../schema/number-series.ts';

export function readHouse(db: DbOrTx): string | undefined {
  return db.select({ facts: house.facts_json }).from(house).where(eq(house.id, 1)).get()?.facts;
}

export function readHouseVersion(db: DbOrTx): number {
  return db.select({ version: house.version }).from(house).where(eq(house.id, 1)).get()?.version ?? 0;
}

interface HouseChange {
  readonly factsJson: string;
  readonly at: string;
  /** The version that the change was made from. */
  readonly version: number;
}

/** False where somebody changed the house since that version. */
export function changeHouse(db: DbOrTx, { factsJson, at, version }: HouseChange): boolean {
  const done = db
    .update(house)
    .set({ facts_json: factsJson, updated_at: at, version: version + 1 })
    .where(and(eq(house.id, 1), eq(house.version, version)))
    .run();
  return done.changes === 1;
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
