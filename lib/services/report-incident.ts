/*
 * A plan that the independent check does not agree with is an incident: written to the log with a reference, told as such, and never shown, priced or printed.
 * Invariant: the reference on the screen is the one in the log, beside everything the check found.
 * Not here: the check itself (../checking).
 * Read next: plan-enquiry.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { type Context, timestamp } from './context.ts';

const REFERENCE_LENGTH = 8;

/** The sentence that the screen shows instead of a plan. */
export function reportIncident(
  context: Context,
  incident: { readonly enquiryId: number; readonly hash: string; readonly wrong: readonly string[] },
): string {
  const { enquiryId, hash, wrong } = incident;
  const reference = `K-${hash.slice(0, REFERENCE_LENGTH).toUpperCase()}`;
  addAuditEntry(context.database.db, {
    at: timestamp(context),
    who: context.actor,
    action: 'incident: plan refused by the check',
    subject: `enquiry ${enquiryId}`,
    detail_json: JSON.stringify({ reference, input_hash: hash, found: wrong }),
  });
  return `Incident ${reference}: the independent check did not agree with the plan, so it is not shown and cannot be quoted. Tell whoever looks after this house the reference. It found: ${wrong.slice(0, 3).join(' ')}`;
}
