/*
 * Saves edits of cells as they are made and answers with the lines as they now read.
 * Invariant: what was typed is kept even when it cannot be read; a cell that somebody else wrote meanwhile is told, never written over unseen.
 * Not here: taking an edit back (undo-change.ts).
 * Read next: apply-change.ts.
 */
import { type Column, isColumn } from '#lib/intake/columns.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import type { CellChange } from '#lib/schedule/schedule-change.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { applyChange } from './apply-change.ts';
import { type ChangeAnswer, changeAnswer } from './change-answer.ts';

export interface CellEdit {
  readonly lineId: number;
  readonly column: string;
  readonly text: string;
  /** What the writer saw in the cell; where it says something else by now, nothing is written and both texts are told. */
  readonly was?: string | undefined;
  /** Marks the value as measured on the valve, or no longer so; absent leaves the mark as it is. */
  readonly measured?: boolean | undefined;
}

export interface CellsEdited extends ChangeAnswer {
  /** The same cells with the texts they had: sending these back undoes the edit. */
  readonly undo: readonly CellEdit[];
}

export function editCells(
  context: Context,
  input: { readonly enquiryId: number; readonly edits: readonly CellEdit[] },
): Result<CellsEdited> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, input.enquiryId);
  if (!enquiry.ok) return enquiry;
  const refused = input.edits.map(refuseCell).find((refusal) => refusal !== undefined);
  if (refused) return failed(refused);
  const cells = input.edits.map((edit) => ({ ...edit, column: edit.column as Column }));
  const applied = context.database.db.transaction(
    (tx) => applyChange(context, tx, { enquiryId: input.enquiryId, kind: 'edited', change: { cells } }),
    { behavior: 'immediate' },
  );
  if (applied.clashes.length > 0 && applied.clashes.length === cells.length && applied.clashes.every(isGone))
    return failed({
      code: 'no-such-line',
      sentence: 'A line of this edit was removed by somebody else; load the schedule again.',
    });
  const lineIds = [...new Set(input.edits.map(({ lineId }) => lineId))];
  const answer = changeAnswer(context, { enquiry: enquiry.value, applied, lineIds });
  return ok({ ...answer, undo: applied.done.cells.map(undoOf).toReversed() });
}

function isGone({ kind }: { readonly kind: string }): boolean {
  return kind === 'gone';
}

/** Why a cell cannot be written at all. */
export function refuseCell(edit: { readonly column: string; readonly text: string }): Refused | undefined {
  if (!isColumn(edit.column)) {
    return { code: 'no-such-column', sentence: `“${edit.column}” is not a column of the schedule.` };
  }
  if (edit.text.length > LIMITS.cell_characters) {
    return {
      code: 'cell-too-long',
      sentence: `A cell holds at most ${LIMITS.cell_characters} characters; shorten the text in ${edit.column}.`,
    };
  }
  return undefined;
}

function undoOf({ lineId, column, before, measuredBefore }: CellChange): CellEdit {
  return { lineId, column, text: before, measured: measuredBefore };
}
