/*
 * A window of an enquiry's schedule for a long table, filtered by text or by trouble.
 * Invariant: of a window only its own duties are worked out; the total counts what the filter lets through.
 * Not here: editing (edit-cells.ts).
 * Read next: line-view.ts.
 */
import { type LineRow, listLines as listRows } from '#db/queries/schedule.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from './authorise.ts';
import type { Context } from './context.ts';
import { type EnquiryRecord, readEnquiry } from './enquiry-record.ts';
import { type LineView, lineView } from './line-view.ts';
import { dutyOf, readRecord } from './schedule-record.ts';
import { type SiteKnowledge, siteKnowledge } from './site-knowledge.ts';

export interface LineWindow {
  readonly enquiryId: number;
  readonly from: number;
  readonly count: number;
  /** Text that some cell must hold. */
  readonly text?: string;
  /** Only lines with something to settle. */
  readonly only?: 'problems';
}

export interface LinesView {
  readonly total: number;
  readonly from: number;
  readonly lines: readonly LineView[];
}

const MOST_LINES = 500;

export function listLines(context: Context, window: LineWindow): Result<LinesView> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, window.enquiryId);
  if (!enquiry.ok) return enquiry;
  const text = window.text?.trim().toLowerCase() ?? '';
  const knowledge = siteKnowledge(context, enquiry.value);
  const rows = listRows(context.database.db, window.enquiryId)
    .filter((row) => text === '' || row.cells_json.toLowerCase().includes(text))
    .filter((row) => window.only !== 'problems' || readRecord(row, knowledge).problems.length > 0);
  const shown = rows.slice(window.from, window.from + Math.min(window.count, MOST_LINES));
  return ok({ total: rows.length, from: window.from, lines: shown.map(viewOf(enquiry.value, knowledge)) });
}

/** The whole schedule at once, for paper. */
export function listAllLines(context: Context, enquiryId: number): Result<readonly LineView[]> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, enquiryId);
  if (!enquiry.ok) return enquiry;
  return ok(listRows(context.database.db, enquiryId).map(viewOf(enquiry.value, siteKnowledge(context, enquiry.value))));
}

function viewOf({ site, row: { site_json } }: EnquiryRecord, knowledge: SiteKnowledge) {
  return (row: LineRow): LineView => {
    const record = readRecord(row, knowledge);
    return lineView(record, dutyOf({ record, site, siteKey: site_json }));
  };
}
