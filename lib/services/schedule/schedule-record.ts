/*
 * The lines of an enquiry, read from their cells, each with its problems and its duty.
 * Invariant: a line is read from its cells and the records of its valve; what was read is kept only as long as these and the site are the same.
 * Not here: choosing equipment.
 * Read next: schedule-cache.ts, ../../intake/read-line.ts, ../../duty/assess-duty.ts.
 */
import type { LineRow } from '#db/queries/schedule.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Context } from '#lib/services/context.ts';
import type { EnquiryRecord } from '#lib/services/enquiries/enquiry-record.ts';
import { type LineKnowledge, type SiteKnowledge, siteKnowledge } from '#lib/services/visits/site-knowledge.ts';
import { keptSchedule, type ReadRow, readRow } from './schedule-cache.ts';

export interface LineRecord extends LineKnowledge, Omit<ReadRow, 'listed'> {
  /** The line as its cells say, without what visits know. */
  readonly listed: ScheduleLine;
}

export function readSchedule(context: Context, enquiry: Pick<EnquiryRecord, 'row' | 'site'>): readonly LineRecord[] {
  const knowledge = siteKnowledge(context, enquiry);
  return keptSchedule(context, enquiry.row).map((read) => recordOf(read, knowledge));
}

export function readRecord(row: LineRow, knowledge: SiteKnowledge): LineRecord {
  return recordOf(readRow(row), knowledge);
}

/** A line that was read, with what visits know of its valve. */
export function recordOf(read: ReadRow, knowledge: SiteKnowledge): LineRecord {
  return { ...read, ...knowledge.know({ line: read.listed, cells: read.cells }) };
}

/** A duty with all its steps is large; the table of a long schedule keeps only what it shows (line-views.ts). */
const DUTIES_KEPT = 500;
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
