/*
 * Takes a change of the schedule back, whoever made it and however large; what takes it back is a change of its own.
 * Invariant: cells that somebody wrote since keep their text and are told; taking back what was taken back makes it again.
 * Not here: which change a screen takes back next (its own history).
 * Read next: apply-change.ts, ../../schedule/schedule-change.ts.
 */
import { findScheduleChange } from '#db/queries/schedule-changes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { wayBack } from '#lib/schedule/schedule-change.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { applyChange } from './apply-change.ts';
import { type ChangeAnswer, changeAnswer } from './change-answer.ts';
import { changeOf } from './read-changes.ts';

export interface ChangeUndone extends ChangeAnswer {
  /** Lines came, went or moved. */
  readonly moved: boolean;
}

export function undoChange(
  context: Context,
  key: { readonly enquiryId: number; readonly changeId: number },
): Result<ChangeUndone> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, key.enquiryId);
  if (!enquiry.ok) return enquiry;
  const row = findScheduleChange(context.database.db, key);
  if (!row)
    return failed({ code: 'no-such-change', sentence: 'That change is not one of this schedule; load it again.' });
  const change = changeOf(row);
  const applied = context.database.db.transaction(
    (tx) => applyChange(context, tx, { enquiryId: key.enquiryId, kind: 'undone', change: wayBack(change) }),
    { behavior: 'immediate' },
  );
  const lineIds = [...new Set(change.cells.map(({ lineId }) => lineId))];
  const { done } = applied;
  const moved = done.added.length + done.removed.length + done.moved.length > 0;
  return ok({ ...changeAnswer(context, { enquiry: enquiry.value, applied, lineIds }), moved });
}
