/*
 * What happened to an enquiry since a screen last looked: whose changes, which lines and cells, and whether lines came, went or moved.
 * Invariant: changes are answered in the order they were made; a screen that asks from the last one it knows misses none.
 * Not here: waking screens (live-changes.ts).
 * Read next: live-changes.ts, undo-change.ts.
 */
import {
  lastScheduleChange,
  latestScheduleChanges,
  type ScheduleChangeRow,
  scheduleChangesAfter,
} from '#db/queries/schedule-changes.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { NO_CHANGE, type ScheduleChange, tellChange } from '#lib/schedule/schedule-change.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { othersPresent } from './live-changes.ts';

export interface ChangeView {
  readonly id: number;
  readonly at: string;
  readonly who: string;
  /** The browser window that made it. */
  readonly screen: string;
  readonly kind: string;
  readonly told: string;
  /** Cells that were written; above a number of them only their lines are worth reading again. */
  readonly cells: readonly { readonly lineId: number; readonly column: string }[];
  /** Lines came, went or moved, or so many cells were written that the screen reads all again. */
  readonly reload: boolean;
}

export interface ChangesView {
  /** The newest change there is. */
  readonly last: number;
  readonly changes: readonly ChangeView[];
  /** Names of the others who have the enquiry open. */
  readonly others: readonly string[];
}

const CHANGES_AT_ONCE = 100;
const CELLS_TOLD = 1000;

export function readChanges(
  context: Context,
  input: { readonly enquiryId: number; readonly after: number },
): Result<ChangesView> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const rows = scheduleChangesAfter(context.database.db, { ...input, limit: CHANGES_AT_ONCE });
  return ok({
    last: rows.at(-1)?.id ?? input.after,
    changes: rows.map(viewOf),
    others: othersPresent({ enquiryId: input.enquiryId, screen: context.screen ?? '' }),
  });
}

/** Number of the newest change of an enquiry that is there. */
export function newestChange(context: Context, enquiryId: number): Result<number> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, enquiryId);
  return enquiry.ok ? ok(lastScheduleChange(context.database.db, enquiryId)) : enquiry;
}

/** The newest first. */
export function listChanges(context: Context, enquiryId: number): Result<readonly ChangeView[]> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  return ok(latestScheduleChanges(context.database.db, { enquiryId, limit: CHANGES_AT_ONCE }).map(viewOf));
}

function viewOf(row: ScheduleChangeRow): ChangeView {
  const detail = changeOf(row);
  const { cells, added, removed, moved } = detail;
  return {
    ...{ id: row.id, at: row.at, who: row.who, screen: row.screen, kind: row.kind },
    told: row.kind === 'enquiry' ? 'site or choices changed' : tellChange(detail),
    cells: cells.slice(0, CELLS_TOLD).map(({ lineId, column }) => ({ lineId, column })),
    reload: added.length + removed.length + moved.length > 0 || cells.length > CELLS_TOLD || row.kind === 'enquiry',
  };
}

export function changeOf(row: Pick<ScheduleChangeRow, 'detail_json'>): ScheduleChange {
  return { ...NO_CHANGE, ...(JSON.parse(row.detail_json) as Partial<ScheduleChange>) };
}
