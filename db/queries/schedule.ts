/*
 * Reads and writes the lines of a schedule and the files they came from.
 * Invariant: positions grow without meaning beyond order.
 * Not here: reading cells (lib/intake).
 * Read next: ../schema/schedule-line.ts, ../schema/list-file.ts.
 */
import { and, asc, desc, eq, inArray, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { listFile } from '../schema/list-file.ts';
import { scheduleLine } from '../schema/schedule-line.ts';

export type LineRow = typeof scheduleLine.$inferSelect;
export type ListFileRow = typeof listFile.$inferSelect;

export function listLines(db: DbOrTx, enquiryId: number): readonly LineRow[] {
  return db
    .select()
    .from(scheduleLine)
    .where(eq(scheduleLine.enquiry_id, enquiryId))
    .orderBy(asc(scheduleLine.position), asc(scheduleLine.id))
    .all();
}

/** The tags of an enquiry's lines, as they are written; lines without one are left out. */
export function tagsOfEnquiry(db: DbOrTx, enquiryId: number): readonly string[] {
  return db
    .select({ tag: sql<string | null>`json_extract(${scheduleLine.cells_json}, '$.tag')` })
    .from(scheduleLine)
    .where(eq(scheduleLine.enquiry_id, enquiryId))
    .all()
    .flatMap(({ tag }) => (tag === null ? [] : [tag]));
}

export function findLine(
  db: DbOrTx,
  key: { readonly enquiryId: number; readonly lineId: number },
): LineRow | undefined {
  return db
    .select()
    .from(scheduleLine)
    .where(and(eq(scheduleLine.id, key.lineId), eq(scheduleLine.enquiry_id, key.enquiryId)))
    .get();
}

export function lastPosition(db: DbOrTx, enquiryId: number): number {
  const row = db
    .select({ last: sql<number | null>`max(${scheduleLine.position})` })
    .from(scheduleLine)
    .where(eq(scheduleLine.enquiry_id, enquiryId))
    .get();
  return row?.last ?? 0;
}

export function insertLines(db: DbOrTx, rows: readonly Omit<LineRow, 'id' | 'version'>[]): readonly number[] {
  return rows.map((row) => Number(db.insert(scheduleLine).values(row).returning({ id: scheduleLine.id }).get().id));
}

export function changeLine(
  db: DbOrTx,
  change: { readonly lineId: number; readonly cellsJson: string; readonly measuredJson: string },
): void {
  db.update(scheduleLine)
    .set({
      cells_json: change.cellsJson,
      measured_json: change.measuredJson,
      version: sql`${scheduleLine.version} + 1`,
    })
    .where(eq(scheduleLine.id, change.lineId))
    .run();
}

export function deleteLines(
  db: DbOrTx,
  key: { readonly enquiryId: number; readonly lineIds: readonly number[] },
): void {
  db.delete(scheduleLine)
    .where(and(eq(scheduleLine.enquiry_id, key.enquiryId), inArray(scheduleLine.id, [...key.lineIds])))
    .run();
}

export function insertListFile(db: DbOrTx, row: Omit<ListFileRow, 'id'>): number {
  return Number(db.insert(listFile).values(row).returning({ id: listFile.id }).get().id);
}

export function findListFile(
  db: DbOrTx,
  key: { readonly enquiryId: number; readonly fileId: number },
): ListFileRow | undefined {
  return db
    .select()
    .from(listFile)
    .where(and(eq(listFile.id, key.fileId), eq(listFile.enquiry_id, key.enquiryId)))
    .get();
}

export type ListFileSummary = Omit<ListFileRow, 'bytes'>;

export function listListFiles(db: DbOrTx, enquiryId: number): readonly ListFileSummary[] {
  return db
    .select({
      id: listFile.id,
      enquiry_id: listFile.enquiry_id,
      file_name: listFile.file_name,
      sha256: listFile.sha256,
      received_at: listFile.received_at,
      mapping_json: listFile.mapping_json,
      outcome_json: listFile.outcome_json,
    })
    .from(listFile)
    .where(eq(listFile.enquiry_id, enquiryId))
    .orderBy(desc(listFile.id))
    .all();
}

export function settleListFile(
  db: DbOrTx,
  row: { readonly fileId: number; readonly mappingJson: string; readonly outcomeJson: string },
): void {
  db.update(listFile)
    .set({ mapping_json: row.mappingJson, outcome_json: row.outcomeJson })
    .where(eq(listFile.id, row.fileId))
    .run();
}
