/*
 * What a screen needs to know of a change that was just made: its number, the lines as they now read, and clashes with who wrote first.
 * Invariant: of a very large change only the first lines are answered; the screen reads the others as they come into sight.
 * Not here: making it (apply-change.ts).
 * Read next: live-changes.ts.
 */
import { findLines } from '#db/queries/schedule.ts';
import { latestScheduleChanges } from '#db/queries/schedule-changes.ts';
import type { ScheduleChange } from '#lib/schedule/schedule-change.ts';
import type { CellClash } from '#lib/schedule/write-cells.ts';
import type { Context } from '#lib/services/context.ts';
import type { EnquiryRecord } from '#lib/services/enquiries/enquiry-record.ts';
import type { LineView } from '#lib/services/lines/line-view.ts';
import { lineViewer } from '#lib/services/lines/line-views.ts';
import type { Applied } from './apply-change.ts';
import { announceChange } from './live-changes.ts';
import { readRow } from './schedule-cache.ts';

export interface Clash extends CellClash {
  /** Who wrote first, and when; empty where it is not known any more. */
  readonly who: string;
  readonly at: string;
}

export interface ChangeAnswer {
  /** Number of the change, for undo; 0 where nothing was to be done. */
  readonly change: number;
  readonly lines: readonly LineView[];
  readonly clashes: readonly Clash[];
}

/** Duties are worked out for so many lines within an answer. */
const LINES_ANSWERED = 60;

/** Changes looked through for who wrote a cell. */
const CHANGES_LOOKED_AT = 50;

export function changeAnswer(
  context: Context,
  input: { readonly enquiry: EnquiryRecord; readonly applied: Applied; readonly lineIds: readonly number[] },
): ChangeAnswer {
  const { enquiry, applied, lineIds } = input;
  const enquiryId = enquiry.row.id;
  if (applied.change > 0) announceChange(enquiryId);
  const rows = findLines(context.database.db, { enquiryId, lineIds: lineIds.slice(0, LINES_ANSWERED) });
  const viewer = lineViewer(context, enquiry);
  return {
    change: applied.change,
    lines: rows.map((row) => viewer.line(readRow(row))),
    clashes: applied.clashes.length === 0 ? [] : whoWasFirst(context, enquiryId, applied.clashes),
  };
}

function whoWasFirst(context: Context, enquiryId: number, clashes: readonly CellClash[]): readonly Clash[] {
  const changes = latestScheduleChanges(context.database.db, { enquiryId, limit: CHANGES_LOOKED_AT }).map((row) => ({
    ...{ who: row.who, at: row.at },
    detail: JSON.parse(row.detail_json) as Partial<ScheduleChange>,
  }));
  return clashes.map((clash) => {
    const first = changes.find(({ detail }) =>
      clash.kind === 'gone'
        ? detail.removed?.some(({ id }) => id === clash.lineId)
        : detail.cells?.some(({ lineId, column }) => lineId === clash.lineId && column === clash.column),
    );
    return { ...clash, who: first?.who ?? '', at: first?.at ?? '' };
  });
}
