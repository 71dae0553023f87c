/*
 * Adds to and reads the log of who did what and when.
 * Invariant: entries are never changed.
 * Not here: deciding who may do what (lib/services).
 * Read next: ../schema/audit-entry.ts.
 */
import { and, asc, count, desc, eq, gte, like, lt, or, type SQL } from 'drizzle-orm';
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

export interface AuditAsked {
  /** Exactly this subject, such as `enquiry 7`. */
  readonly subject?: string;
  /** Subjects of this kind, such as `enquiry`. */
  readonly kind?: string;
  readonly whoId?: string;
  /** Words in the action or the detail. */
  readonly words?: string;
  readonly from?: string;
  /** The day after the last one. */
  readonly before?: string;
}

export function auditPage(
  db: DbOrTx,
  { asked, page, size }: { readonly asked: AuditAsked; readonly page: number; readonly size: number },
): { readonly rows: readonly AuditRow[]; readonly total: number } {
  const where = and(...conditions(asked));
  const total = db.select({ total: count() }).from(auditEntry).where(where).get()?.total ?? 0;
  const rows = db
    .select()
    .from(auditEntry)
    .where(where)
    .orderBy(desc(auditEntry.id))
    .limit(size)
    .offset((page - 1) * size)
    .all();
  return { rows, total };
}

/** Everybody whom the log names, once an id, by their latest name. */
export function peopleInAudit(db: DbOrTx): readonly { readonly id: string; readonly name: string }[] {
  const rows = db
    .select({ id: auditEntry.who_id, name: auditEntry.who })
    .from(auditEntry)
    .groupBy(auditEntry.who_id, auditEntry.who)
    .orderBy(asc(auditEntry.who))
    .all();
  const named = rows.flatMap(({ id, name }) => (id === null ? [] : [{ id, name }]));
  return [...new Map(named.map((person) => [person.id, person])).values()];
}

function conditions({ subject, kind, whoId, words, from, before }: AuditAsked): readonly SQL[] {
  const all = [
    subject === undefined ? undefined : eq(auditEntry.subject, subject),
    kind === undefined ? undefined : or(eq(auditEntry.subject, kind), like(auditEntry.subject, `${kind} %`)),
    whoId === undefined ? undefined : eq(auditEntry.who_id, whoId),
    words === undefined
      ? undefined
      : or(like(auditEntry.action, holding(words)), like(auditEntry.detail_json, holding(words))),
    from === undefined ? undefined : gte(auditEntry.at, from),
    before === undefined ? undefined : lt(auditEntry.at, before),
  ];
  return all.filter((condition) => condition !== undefined);
}

/** A percent sign or an underscore in the words is just that: SQLite takes it literally only after an escape, so it is widened to any one character. */
function holding(words: string): string {
  return `%${words.replaceAll('%', '_')}%`;
}
