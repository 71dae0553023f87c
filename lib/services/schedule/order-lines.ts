/*
 * The ids of the lines that a filter lets through, in their order: what a long table scrolls over.
 * Invariant: the server answers others while duties are worked out; a long working is answered part by part, saying how far it came.
 * Not here: the lines themselves (list-lines.ts).
 * Read next: ../../schedule/line-filter.ts, list-lines.ts.
 */
import { lastScheduleChange } from '#db/queries/schedule-changes.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { asksDuty, cellsPass, dutyPasses, isDuty, type LineFilter } from '#lib/schedule/line-filter.ts';
import { type SortKey, sortLines } from '#lib/schedule/sort-lines.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, milliseconds } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { type LineViewer, lineViewer } from '#lib/services/lines/line-views.ts';
import { freshSchedule } from './schedule-cache.ts';
import type { LineRecord } from './schedule-record.ts';

export interface LinesOrder {
  readonly ids: readonly number[];
  /** Lines there are, whether or not the filter lets them through. */
  readonly lines: number;
  /** Lines looked at so far; the same question asked again goes on from there. */
  readonly looked: number;
  /** Number of the newest change that this order knows of. */
  readonly change: number;
}

/** One stretch of working before others get their turn, and the longest time before an answer. */
const STRETCH_MS = 10;
const ANSWER_MS = 400;

export async function orderLines(
  context: Context,
  input: { readonly enquiryId: number; readonly filter: LineFilter },
): Promise<Result<LinesOrder>> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  const change = lastScheduleChange(context.database.db, input.enquiryId);
  const viewer = lineViewer(context, enquiry.value);
  const all = await freshSchedule(context, enquiry.value.row);
  const { filter } = input;
  const passed = all.map(viewer.record).filter((record) => cellsPass(filter, record));
  if (!asksDuty(filter)) {
    return ok({ ids: sorted(passed.map(cellKey(filter)), filter), lines: all.length, looked: all.length, change });
  }
  const { keys, looked } = await throughDuties({ context, viewer, filter, passed });
  const isWhole = looked === passed.length;
  return ok({ ids: sorted(keys, filter), lines: all.length, looked: isWhole ? all.length : looked, change });
}

interface DutyQuestion {
  readonly context: Context;
  readonly viewer: LineViewer;
  readonly filter: LineFilter;
  readonly passed: readonly LineRecord[];
}

async function throughDuties({ context, viewer, filter, passed }: DutyQuestion) {
  const keys: SortKey[] = [];
  const until = milliseconds(context) + ANSWER_MS;
  let pause = milliseconds(context) + STRETCH_MS;
  let looked = 0;
  for (const record of passed) {
    const duty = viewer.duty(record);
    looked += 1;
    if (dutyPasses(filter, duty)) {
      const column = filter.sort?.column;
      keys.push(column && isDuty(column) ? { id: record.row.id, key: duty[column].nominal } : cellKey(filter)(record));
    }
    const now = milliseconds(context);
    if (now < pause) continue;
    if (now >= until) break;
    await new Promise((resolve) => setImmediate(resolve));
    pause = milliseconds(context) + STRETCH_MS;
  }
  return { keys, looked };
}

function cellKey({ sort }: LineFilter): (record: LineRecord) => SortKey {
  const column = sort?.column;
  if (!column || isDuty(column)) return ({ row }) => ({ id: row.id, key: '' });
  return ({ row, cells, line }) => ({
    id: row.id,
    // DN 150 and NPS 6 are one size: what is compared is the length, not how it was written.
    key: (column === 'size' ? line.size?.nominal : undefined) ?? (cells[column] ?? '').trim(),
  });
}

function sorted(keys: readonly SortKey[], { sort }: LineFilter): readonly number[] {
  return sort ? sortLines(keys, sort.way) : keys.map(({ id }) => id);
}
