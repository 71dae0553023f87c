/*
 * Lines of an enquiry's schedule for a long table: by place under a filter, or by their ids.
 * Invariant: of what is asked only its own duties are worked out; the total counts what the filter lets through.
 * Not here: editing (edit-cells.ts), filters that ask the duty (order-lines.ts).
 * Read next: ../lines/line-views.ts, order-lines.ts.
 */
import { ok, type Result } from '#lib/kernel/result.ts';
import { cellsPass, NO_FILTER } from '#lib/schedule/line-filter.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, milliseconds } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import type { LineView } from '#lib/services/lines/line-view.ts';
import { lineViewer } from '#lib/services/lines/line-views.ts';
import { freshSchedule, keptSchedule } from './schedule-cache.ts';

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
  const filter = { ...NO_FILTER, text: window.text ?? '', findings: window.only ?? ('all' as const) };
  const rows = keptSchedule(context, enquiry.value.row).filter((read) => cellsPass(filter, read));
  const shown = rows.slice(window.from, window.from + Math.min(window.count, MOST_LINES));
  const viewer = lineViewer(context, enquiry.value);
  return ok({ total: rows.length, from: window.from, lines: shown.map(viewer.line) });
}

/** One stretch of working before others get their turn. */
const STRETCH_MS = 10;

/** The lines named that are there, each with its duty; others get their turn in between. */
export async function readLines(
  context: Context,
  input: { readonly enquiryId: number; readonly lineIds: readonly number[] },
): Promise<Result<readonly LineView[]>> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  const viewer = lineViewer(context, enquiry.value);
  const wanted = new Set(input.lineIds.slice(0, MOST_LINES));
  const lines: LineView[] = [];
  let pause = milliseconds(context) + STRETCH_MS;
  for (const read of await freshSchedule(context, enquiry.value.row)) {
    if (!wanted.has(read.row.id)) continue;
    lines.push(viewer.line(read));
    if (milliseconds(context) < pause) continue;
    await new Promise((resolve) => setImmediate(resolve));
    pause = milliseconds(context) + STRETCH_MS;
  }
  return ok(lines);
}

export interface LineCells extends Pick<LineView, 'id' | 'cells' | 'measured'> {}

/** What the cells of lines say, without their duties: for copying and filling far beyond what is in sight. */
export function readCells(
  context: Context,
  input: { readonly enquiryId: number; readonly lineIds: readonly number[] },
): Result<readonly LineCells[]> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  const wanted = new Set(input.lineIds);
  return ok(
    keptSchedule(context, enquiry.value.row)
      .filter(({ row }) => wanted.has(row.id))
      .map(({ row, cells, measured }) => ({ id: row.id, cells, measured })),
  );
}

/** The whole schedule at once, for paper. */
export function listAllLines(context: Context, enquiryId: number): Result<readonly LineView[]> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, enquiryId);
  if (!enquiry.ok) return enquiry;
  return ok(keptSchedule(context, enquiry.value.row).map(lineViewer(context, enquiry.value).line));
}
