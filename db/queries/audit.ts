/*
 * Adds to and reads the log of who did what and when.
 * Invariant: entries are never changed.
 * Not here: deciding who may do what (lib/services).
 * Read next: ../schema/audit-entry.ts.
 */
import { desc, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { auditEntry } from '../schema/audit-entry.ts';

export type AuditRow = typeof auditEntry.$inferSelect;

interface Deed extends Omit<AuditRow, 'id' | 'who' | 'who_id'> {
  readonly who: { readonly id: string; readonly name: string };
}

export function addAuditEntry(db: DbOrTx, { who, ...row }: Deed): void {
  db.insert(auditEntry)
    .values({ ...row, who: who.name, who_id: who.id })
    .run();
}

export function auditOf(db: DbOrTx, subject: string): readonly AuditRow[] {
  return db
    .select()
    .from(auditEntry)
    .where(eq(auditEntry.subject, subject))
    .orderBy(desc(auditEntry.id))
    .limit(200)
    .all();
}
