/*
 * Adds to and reads the history of equipment, rates, house facts and house rules.
 * Invariant: entries are never changed; the newest comes first.
 * Not here: undoing a change (lib/services).
 * Read next: ../schema/record-change.ts.
 */
import { desc, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { recordChange } from '../schema/record-change.ts';

export type ChangeRow = typeof recordChange.$inferSelect;

export function addChange(db: DbOrTx, row: Omit<ChangeRow, 'id'>): void {
  db.insert(recordChange).values(row).run();
}

export function changesOf(db: DbOrTx, subject: string): readonly ChangeRow[] {
  return db
    .select()
    .from(recordChange)
    .where(eq(recordChange.subject, subject))
    .orderBy(desc(recordChange.id))
    .limit(100)
    .all();
}
