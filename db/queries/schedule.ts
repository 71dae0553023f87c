/*
 * Reads and writes the lines of a schedule and the files they came from.
 * Invariant: positions grow without meaning beyond order.
 * Not here: reading cells (lib/intake).
 * Read next: ../schema/schedule-line.ts, ../schema/list-file.ts.
 */
import { and, asc, desc, eq, gt, lt, type SQL, sql } from 'drizzle-orm';
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

/** What tells whether a line is still the one that was read. */
export interface LineStamp {
  readonly id: number;
  readonly version: number;
  readonly position: number;
}

/** Stamps of all lines in the order of the list. */
export function lineStamps(db: DbOrTx, enquiryId: number): readonly LineStamp[] {
  return db
    .select({ id: scheduleLine.id, version: scheduleLine.version, position: scheduleLine.position })
    .from(scheduleLine)
    .where(eq(scheduleLine.enquiry_id, enquiryId))
    .orderBy(asc(scheduleLine.position), asc(scheduleLine.id))
    .all();
}

/** The lines named, in no order; SQLite reads the ids out of one text, however many they are. */
export function findLines(
  db: DbOrTx,
  key: { readonly enquiryId: number; readonly lineIds: readonly number[] },
): readonly LineRow[] {
  return db
    .select()
    .from(scheduleLine)
    .where(and(eq(scheduleLine.enquiry_id, key.enquiryId), idAmong(key.lineIds)))
    .all();
}

/** The lines that stand before and after one in its schedule. */
export function linesBeside(
  db: DbOrTx,
  { enquiryId, position }: { readonly enquiryId: number; readonly position: number },
): { readonly before: number | null; readonly after: number | null } {
  const beside = (where: SQL, order: SQL) =>
    db
      .select({ id: scheduleLine.id })
      .from(scheduleLine)
      .where(and(eq(scheduleLine.enquiry_id, enquiryId), where))
      .orderBy(order)
      .limit(1)
      .get()?.id ?? null;
  return {
    before: beside(lt(scheduleLine.position, position), desc(scheduleLine.position)),
    after: beside(gt(scheduleLine.position, position), asc(scheduleLine.position)),
  };
}

export function countLines(db: DbOrTx, enquiryId: number): number {
  const row = db
    .select({ lines: sql<number>`count(*)` })
    .from(scheduleLine)
    .where(eq(scheduleLine.enquiry_id, enquiryId))
    .get();
  return row?.lines ?? 0;
}

export function lastPosition(db: DbOrTx, enquiryId: number): number {
  const row = db
    .select({ last: sql<number | null>`max(${scheduleLine.position})` })
    .from(scheduleLine)
    .where(eq(scheduleLine.enquiry_id, enquiryId))
    .get();
  return row?.last ?? 0;
}

/** The highest row number that a line of the enquiry bears. */
export function lastRow(db: DbOrTx, enquiryId: number): number {
  const row = db
    .select({ last: sql<number | null>`max(${scheduleLine.row})` })
    .from(scheduleLine)
    .where(eq(scheduleLine.enquiry_id, enquiryId))
    .get();
  return row?.last ?? 0;
}

/** Rows that one statement writes: SQLite takes so many values at once. */
const ROWS_AT_ONCE = 500;

type NewLineRow = Omit<LineRow, 'id' | 'version' | 'listed_json'> & Partial<Pick<LineRow, 'listed_json'>>;

/** Answers with the new ids, in the order of the rows. */
export function insertLines(db: DbOrTx, rows: readonly NewLineRow[]): readonly number[] {
  const ids: number[] = [];
  for (let start = 0; start < rows.length; start += ROWS_AT_ONCE) {
    const some = rows.slice(start, start + ROWS_AT_ONCE);
    const made = db.insert(scheduleLine).values(some).returning({ id: scheduleLine.id }).all();
    ids.push(...made.map(({ id }) => id).toSorted((a, b) => a - b));
  }
  return ids;
}

/** Lines that were removed come back under their own ids, one version on. */
export function restoreLines(db: DbOrTx, rows: readonly LineRow[]): void {
  for (let start = 0; start < rows.length; start += ROWS_AT_ONCE) {
    const some = rows.slice(start, start + ROWS_AT_ONCE).map((row) => ({ ...row, version: row.version + 1 }));
    db.insert(scheduleLine).values(some).run();
  }
}

export interface LineTexts {
  readonly id: number;
  readonly cells_json: string;
  readonly measured_json: string;
}

/** One statement, however many lines. */
export function changeLines(db: DbOrTx, lines: readonly LineTexts[]): void {
  if (lines.length === 0) return;
  db.run(sql`UPDATE ${scheduleLine} SET
      cells_json = changed.value ->> 'cells_json',
      measured_json = changed.value ->> 'measured_json',
      version = version + 1
    FROM json_each(${JSON.stringify(lines)}) AS changed
    WHERE ${scheduleLine}.id = changed.value ->> 'id'`);
}

/** Gives lines another place; their cells, and so their versions, stay. */
export function placeLines(db: DbOrTx, places: readonly { readonly id: number; readonly position: number }[]): void {
  if (places.length === 0) return;
  db.run(sql`UPDATE ${scheduleLine} SET position = placed.value ->> 'position'
    FROM json_each(${JSON.stringify(places)}) AS placed
    WHERE ${scheduleLine}.id = placed.value ->> 'id'`);
}

/** Keeps what the newest list says of lines, beside what the Desk made of it. */
export function relistLines(
  db: DbOrTx,
  lines: readonly { readonly id: number; readonly listed: string | null }[],
): void {
  if (lines.length === 0) return;
  db.run(sql`UPDATE ${scheduleLine} SET listed_json = said.value ->> 'listed', version = version + 1
    FROM json_each(${JSON.stringify(lines)}) AS said
    WHERE ${scheduleLine}.id = said.value ->> 'id'`);
}

export function deleteLines(
  db: DbOrTx,
  key: { readonly enquiryId: number; readonly lineIds: readonly number[] },
): void {
  db.delete(scheduleLine)
    .where(and(eq(scheduleLine.enquiry_id, key.enquiryId), idAmong(key.lineIds)))
    .run();
}

function idAmong(lineIds: readonly number[]) {
  return sql`${scheduleLine.id} IN (SELECT value FROM json_each(${JSON.stringify(lineIds)}))`;
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
