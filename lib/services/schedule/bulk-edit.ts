/*
 * Writes one column of many lines at once, marks it as measured, or replaces a text wherever it stands.
 * Invariant: works on all lines that are named, loaded on a screen or not; one change, taken back as one.
 * Not here: single cells (edit-cells.ts).
 * Read next: ../../schedule/replace-text.ts, apply-change.ts.
 */
import type { Column } from '#lib/intake/columns.ts';
import { isColumn } from '#lib/intake/columns.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Replaced, type Replacement, replaceText } from '#lib/schedule/replace-text.ts';
import type { CellWrite } from '#lib/schedule/schedule-change.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { type EnquiryRecord, readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { applyChange } from './apply-change.ts';
import { type ChangeAnswer, changeAnswer } from './change-answer.ts';
import { refuseCell } from './edit-cells.ts';
import { keptSchedule, type ReadRow } from './schedule-cache.ts';

export type BulkEdit =
  | { readonly kind: 'set'; readonly column: string; readonly text: string }
  | { readonly kind: 'measured' | 'unmeasured'; readonly column: string }
  | (Omit<Replacement, 'columns'> & { readonly kind: 'replace'; readonly columns: readonly string[] });

interface BulkRequest {
  readonly enquiryId: number;
  /** Absent for all lines of the schedule. */
  readonly lineIds?: readonly number[] | undefined;
  readonly edit: BulkEdit;
}

export interface BulkDone extends ChangeAnswer {
  /** Cells that were written. */
  readonly cells: number;
}

export function bulkEdit(context: Context, request: BulkRequest): Result<BulkDone> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, request.enquiryId);
  if (!enquiry.ok) return enquiry;
  const writes = writesOf(request.edit, linesMeant(context, enquiry.value, request));
  if (!writes.ok) return writes;
  const refused = writes.value.map(refuseCell).find((refusal) => refusal !== undefined);
  if (refused) return failed(refused);
  const applied = context.database.db.transaction(
    (tx) => applyChange(context, tx, { enquiryId: request.enquiryId, kind: 'edited', change: { cells: writes.value } }),
    { behavior: 'immediate' },
  );
  const { cells } = applied.done;
  const lineIds = [...new Set(cells.map(({ lineId }) => lineId))];
  return ok({ ...changeAnswer(context, { enquiry: enquiry.value, applied, lineIds }), cells: cells.length });
}

export interface ReplacePreview {
  readonly cells: number;
  readonly lines: number;
  /** The first cells, in the order of the list. */
  readonly first: readonly Replaced[];
}

const FIRST_SHOWN = 200;

/** What replacing would write; nothing is written. */
export function previewReplace(context: Context, request: BulkRequest): Result<ReplacePreview> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, request.enquiryId);
  if (!enquiry.ok) return enquiry;
  if (request.edit.kind !== 'replace') return ok({ cells: 0, lines: 0, first: [] });
  const found = replaced(request.edit, linesMeant(context, enquiry.value, request));
  if (!found.ok) return found;
  return ok({
    cells: found.value.length,
    lines: new Set(found.value.map(({ lineId }) => lineId)).size,
    first: found.value.slice(0, FIRST_SHOWN),
  });
}

/** In the order they are named; all of the list where none are. */
function linesMeant(context: Context, { row }: EnquiryRecord, { lineIds }: BulkRequest): readonly ReadRow[] {
  const all = keptSchedule(context, row);
  if (!lineIds) return all;
  const byId = new Map(all.map((read) => [read.row.id, read]));
  return lineIds.flatMap((id) => byId.get(id) ?? []);
}

function writesOf(edit: BulkEdit, lines: readonly ReadRow[]): Result<readonly CellWrite[]> {
  if (edit.kind === 'replace') {
    const found = replaced(edit, lines);
    if (!found.ok) return found;
    return ok(
      found.value.map(({ lineId, column, before, after }) => ({ ...{ lineId, column, text: after, was: before } })),
    );
  }
  const { column } = edit;
  if (!isColumn(column)) return failed(noColumn(column));
  return ok(
    lines.map(({ row, cells }) => {
      const said = cells[column] ?? '';
      if (edit.kind === 'set') return { lineId: row.id, column, text: edit.text };
      return { lineId: row.id, column, text: said, was: said, measured: edit.kind === 'measured' };
    }),
  );
}

function replaced(
  edit: Extract<BulkEdit, { readonly kind: 'replace' }>,
  lines: readonly ReadRow[],
): Result<readonly Replaced[]> {
  const columns: Column[] = [];
  for (const column of edit.columns) {
    if (!isColumn(column)) return failed(noColumn(column));
    columns.push(column);
  }
  return ok(
    replaceText(
      lines.map(({ row, cells }) => ({ id: row.id, cells })),
      { ...edit, columns },
    ),
  );
}

function noColumn(column: string) {
  return { code: 'no-such-column', sentence: `“${column}” is not a column of the schedule.` };
}
