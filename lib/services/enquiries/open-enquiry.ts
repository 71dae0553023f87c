/*
 * One enquiry as its workspace shows it: facts, files, quotes and the state of its plan.
 * Invariant: reads only.
 * Not here: its lines (list-lines.ts) and its plan (plan-view.ts).
 * Read next: ../schedule/list-lines.ts, ../plans/plan-view.ts.
 */

import { auditOf } from '#db/queries/audit.ts';
import { listListFiles } from '#db/queries/schedule.ts';
import type { PlanConstraints } from '#lib/contracts/constraints.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Preference } from '#lib/equipment/choices.ts';
import type { Taken } from '#lib/intake/take-rows.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { type PlanState, planStateOf, prepareInput } from '#lib/services/plans/plan-enquiry.ts';
import { listIssuedQuotes, type QuoteView } from '#lib/services/quotes/list-issued-quotes.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';

export interface EnquiryView {
  readonly id: number;
  readonly number: string;
  readonly title: string;
  readonly state: string;
  readonly version: number;
  readonly customer: { readonly id: number; readonly name: string };
  readonly site: Site;
  /** The site as it was entered. */
  readonly siteJson: Readonly<Record<string, unknown>>;
  readonly preference: Preference;
  readonly paperUnits: UnitSystem;
  readonly constraints: PlanConstraints;
  readonly lines: number;
  readonly files: readonly {
    readonly id: number;
    readonly fileName: string;
    readonly receivedAt: string;
    /** Null until the list was taken. */
    readonly outcome: Pick<Taken, 'counts' | 'setAside' | 'problems'> | null;
  }[];
  readonly quotes: readonly QuoteView[];
  readonly plan: PlanState;
  /** The newest first. */
  readonly log: readonly { readonly at: string; readonly who: string; readonly action: string }[];
}

export function openEnquiry(context: Context, enquiryId: number): Result<EnquiryView> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const prepared = prepareInput(context, enquiryId);
  if (!prepared.ok) return prepared;
  const { enquiry, input, hash } = prepared.value;
  const db = context.database.db;
  return ok({
    id: enquiryId,
    number: enquiry.row.number,
    title: enquiry.row.title,
    state: enquiry.row.state,
    version: enquiry.row.version,
    customer: enquiry.customer,
    site: enquiry.site,
    siteJson: JSON.parse(enquiry.row.site_json) as Record<string, unknown>,
    preference: enquiry.preference,
    paperUnits: enquiry.paperUnits,
    constraints: enquiry.constraints,
    lines: input.lines.length,
    files: listListFiles(db, enquiryId).map((file) => ({
      id: file.id,
      fileName: file.file_name,
      receivedAt: file.received_at,
      outcome:
        file.outcome_json === null
          ? null
          : (JSON.parse(file.outcome_json) as Pick<Taken, 'counts' | 'setAside' | 'problems'>),
    })),
    quotes: listIssuedQuotes(context, enquiryId),
    plan: planStateOf(context, { enquiryId, hash }),
    log: auditOf(db, `enquiry ${enquiryId}`).map(({ at, who, action }) => ({ at, who, action })),
  });
}
