/*
 * The lines of an enquiry, read from their cells, each with its problems and its duty.
 * Invariant: a line is read from its cells every time; duties are kept only as long as cells and site are the same.
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

export interface LineRecord {
  readonly row: LineRow;
  readonly cells: Cells;
  readonly measured: readonly Column[];
  readonly line: ScheduleLine;
  readonly problems: readonly IntakeProblem[];
}

export function readSchedule(context: Context, enquiryId: number): readonly LineRecord[] {
  return listLines(context.database.db, enquiryId).map(readRecord);
}

export function readRecord(row: LineRow): LineRecord {
  const cells = JSON.parse(row.cells_json) as Cells;
  const measured = JSON.parse(row.measured_json) as Column[];
  const { line, problems } = readLine({ row: row.row, cells, measured });
  return { row, cells, measured, line, problems };
}

const DUTIES_KEPT = 40_000;
const duties = new Map<string, Duty>();

/** Duty of a line; the same text on the same site is worked out once. */
export function dutyOf(input: { readonly record: LineRecord; readonly site: Site; readonly siteKey: string }): Duty {
  const { record, site, siteKey } = input;
  const key = `${siteKey}\n${record.row.cells_json}\n${record.row.measured_json}\n${record.row.row}`;
  const kept = duties.get(key);
  if (kept) return kept;
  const duty = assessDuty({ line: record.line, site });
  if (duties.size >= DUTIES_KEPT) duties.clear();
  duties.set(key, duty);
  return duty;
}
