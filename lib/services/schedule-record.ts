/*
 * The lines of an enquiry, read from their cells, each with its problems and its duty.
 * Invariant: a line is read from its cells and the records of its valve every time; duties are kept only as long as these and the site are the same.
 * Not here: choosing equipment.
 * Read next: ../intake/read-line.ts, ../duty/assess-duty.ts.
 */
import { type LineRow, listLines } from '#db/queries/schedule.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Cells, Column } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import type { IntakeProblem } from '#lib/intake/take-rows.ts';
import type { Context } from './context.ts';
import type { EnquiryRecord } from './enquiry-record.ts';
import { type LineKnowledge, type SiteKnowledge, siteKnowledge } from './site-knowledge.ts';

export interface LineRecord extends WrittenLine, LineKnowledge {
  readonly row: LineRow;
  /** The line as its cells say, without what visits know. */
  readonly listed: ScheduleLine;
  readonly problems: readonly IntakeProblem[];
}

/** What is written in a line's cells, before anything is understood. */
interface WrittenLine {
  readonly cells: Cells;
  readonly measured: readonly Column[];
}

export function readSchedule(context: Context, enquiry: Pick<EnquiryRecord, 'row' | 'site'>): readonly LineRecord[] {
  const knowledge = siteKnowledge(context, enquiry);
  return listLines(context.database.db, enquiry.row.id).map((row) => readRecord(row, knowledge));
}

export function readRecord(row: LineRow, knowledge: SiteKnowledge): LineRecord {
  const written = readWritten(row);
  const { line: listed, problems } = readLine({ row: row.row, ...written });
  return { row, ...written, listed, problems, ...knowledge.know({ line: listed, cells: written.cells }) };
}

export function readWritten(row: LineRow): WrittenLine {
  return { cells: JSON.parse(row.cells_json) as Cells, measured: JSON.parse(row.measured_json) as Column[] };
}

const DUTIES_KEPT = 40_000;
const duties = new Map<string, Duty>();

/** Duty of a line; the same text on the same site is worked out once. */
export function dutyOf(input: { readonly record: LineRecord; readonly site: Site; readonly siteKey: string }): Duty {
  const { record, site, siteKey } = input;
  const key = `${siteKey}\n${record.row.cells_json}\n${record.row.measured_json}\n${record.row.row}\n${record.key}`;
  const kept = duties.get(key);
  if (kept) return kept;
  const duty = assessDuty({ line: record.line, site });
  if (duties.size >= DUTIES_KEPT) duties.clear();
  duties.set(key, duty);
  return duty;
}
