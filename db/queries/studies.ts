/*
 * Reads and keeps what an enquiry came to under other terms.
 * Invariant: one row an enquiry and kind; a newer one takes its place.
 * Not here: plans (quotes.ts).
 * Read next: ../schema/study.ts.
 */
import { and, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { study } from '../schema/study.ts';

export type StudyRow = typeof study.$inferSelect;

interface StudyKey {
  readonly enquiryId: number;
  readonly kind: string;
}

export function findStudy(db: DbOrTx, { enquiryId, kind }: StudyKey): StudyRow | undefined {
  return db
    .select()
    .from(study)
    .where(and(eq(study.enquiry_id, enquiryId), eq(study.kind, kind)))
    .get();
}

export function putStudy(db: DbOrTx, row: Omit<StudyRow, 'id'>): void {
  const { input_hash, state, result_json, created_at } = row;
  db.insert(study)
    .values(row)
    .onConflictDoUpdate({
      target: [study.enquiry_id, study.kind],
      set: { input_hash, state, result_json, created_at },
    })
    .run();
}
