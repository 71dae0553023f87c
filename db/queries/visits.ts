/*
 * Reads and writes what visits found.
 * Invariant: a record of the same valve and day is replaced, never doubled; setting aside keeps what was typed.
 * Not here: using the records (lib/found).
 * Read next: ../schema/visit-record.ts.
 */
import { and, asc, desc, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { visitRecord } from '../schema/visit-record.ts';

export type VisitRow = typeof visitRecord.$inferSelect;

/** All records of one customer's site, the newest first. */
export function visitsOfSite(
  db: DbOrTx,
  key: { readonly customerId: number; readonly siteKey: string },
): readonly VisitRow[] {
  return db
    .select()
    .from(visitRecord)
    .where(and(eq(visitRecord.customer_id, key.customerId), eq(visitRecord.site_key, key.siteKey)))
    .orderBy(desc(visitRecord.visited_on), asc(visitRecord.id))
    .all();
}

export function findVisit(db: DbOrTx, id: number): VisitRow | undefined {
  return db.select().from(visitRecord).where(eq(visitRecord.id, id)).get();
}

export function keepVisit(db: DbOrTx, row: Omit<VisitRow, 'id' | 'set_aside'>): number {
  const { cells_json, enquiry_id, under, site, tag, recorded_by, recorded_at } = row;
  const kept = db
    .insert(visitRecord)
    .values(row)
    .onConflictDoUpdate({
      target: [
        visitRecord.customer_id,
        visitRecord.site_key,
        visitRecord.tag_key,
        visitRecord.number,
        visitRecord.visited_on,
      ],
      set: { cells_json, enquiry_id, under, site, tag, recorded_by, recorded_at },
    })
    .returning({ id: visitRecord.id })
    .get();
  return Number(kept.id);
}

export function setVisitAside(db: DbOrTx, change: { readonly id: number; readonly reason: string }): void {
  db.update(visitRecord).set({ set_aside: change.reason }).where(eq(visitRecord.id, change.id)).run();
}
