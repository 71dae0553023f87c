/*
 * Says that a record of a visit is not to be used, with the reason, or that it is again.
 * Invariant: what was typed stays; nobody sets a record aside without a reason.
 * Not here: correcting a record (record it again for the same day: record-visits.ts).
 * Read next: site-knowledge.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { findVisit, setVisitAside as write } from '#db/queries/visits.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';

export function setVisitAside(
  context: Context,
  input: { readonly visitId: number; readonly use: 'yes' | 'no'; readonly reason: string },
): Result<{ readonly setAside: string }> {
  const allowed = authorise(context, 'record visits');
  if (!allowed.ok) return allowed;
  const reason = input.use === 'yes' ? '' : input.reason.trim();
  if (input.use === 'no' && reason === '')
    return failed({ code: 'reason-missing', sentence: 'Say why the record is not to be used, such as “wrong valve”.' });
  if (reason.length > LIMITS.cell_characters)
    return failed({ code: 'reason-too-long', sentence: `At most ${LIMITS.cell_characters} characters; shorten it.` });
  const visit = findVisit(context.database.db, input.visitId);
  if (!visit)
    return failed({ code: 'no-such-visit', sentence: 'That record is not there any more; load the page again.' });
  context.database.db.transaction(
    (tx) => {
      write(tx, { id: visit.id, reason });
      addAuditEntry(tx, {
        at: timestamp(context),
        who: context.actor,
        action: input.use === 'yes' ? 'visit used again' : 'visit set aside',
        subject: `enquiry ${visit.enquiry_id}`,
        detail_json: JSON.stringify({ id: visit.id, tag: visit.tag, reason, before: visit.set_aside }),
      });
    },
    { behavior: 'immediate' },
  );
  return ok({ setAside: reason });
}
