/*
 * Adds to and reads the changes of a schedule.
 * Invariant: rows are only ever added.
 * Not here: what a change holds (../../lib/schedule/schedule-change.ts).
 * Read next: ../schema/schedule-change.ts.
 */
import { and, asc, desc, eq, gt, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { scheduleChange } from '../schema/schedule-change.ts';

export type ScheduleChangeRow = typeof scheduleChange.$inferSelect;

export function insertScheduleChange(db: DbOrTx, row: Omit<ScheduleChangeRow, 'id'>): number {
  return db.insert(scheduleChange).values(row).returning({ id: scheduleChange.id }).get().id;
}

export function findScheduleChange(
  db: DbOrTx,
  key: { readonly enquiryId: number; readonly changeId: number },
): ScheduleChangeRow | undefined {
  return db
    .select()
    .from(scheduleChange)
    .where(and(eq(scheduleChange.id, key.changeId), eq(scheduleChange.enquiry_id, key.enquiryId)))
    .get();
}

/** Number of the newest change; 0 before the first. */
export function lastScheduleChange(db: DbOrTx, enquiryId: number): number {
  const row = db
    .select({ last: sql<number | null>`max(${scheduleChange.id})` })
    .from(scheduleChange)
    .where(eq(scheduleChange.enquiry_id, enquiryId))
    .get();
  return row?.last ?? 0;
}

/** The oldest first. */
export function scheduleChangesAfter(
  db: DbOrTx,
  key: { readonly enquiryId: number; readonly after: number; readonly limit: number },
): readonly ScheduleChangeRow[] {
  return db
    .select()
    .from(scheduleChange)
    .where(and(eq(scheduleChange.enquiry_id, key.enquiryId), gt(scheduleChange.id, key.after)))
    .orderBy(asc(scheduleChange.id))
    .limit(key.limit)
    .all();
}

/** The newest first. */
export function latestScheduleChanges(
  db: DbOrTx,
  key: { readonly enquiryId: number; readonly limit: number },
): readonly ScheduleChangeRow[] {
  return db
    .select()
    .from(scheduleChange)
    .where(eq(scheduleChange.enquiry_id, key.enquiryId))
    .orderBy(desc(scheduleChange.id))
    .limit(key.limit)
    .all();
}
