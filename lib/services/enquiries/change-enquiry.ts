/*
 * Changes what is known of an enquiry: title, site, preference, choices on the plan, units on papers.
 * Invariant: with a version given, a change made in the meantime by somebody else is a clear conflict, never lost.
 * Not here: lines (edit-cells.ts) and quotes (issue-quote.ts).
 * Read next: enquiry-record.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { changeEnquiry as changeRow, type EnquiryChange } from '#db/queries/enquiries.ts';
import { insertScheduleChange } from '#db/queries/schedule-changes.ts';
import { constraintsToJson, type PlanConstraints } from '#lib/contracts/constraints.ts';
import { parseSite } from '#lib/contracts/site.ts';
import type { Preference } from '#lib/equipment/choices.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { announceChange } from '#lib/services/schedule/live-changes.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { readEnquiry } from './enquiry-record.ts';

export interface EnquiryEdit {
  readonly enquiryId: number;
  readonly version?: number | undefined;
  readonly title?: string | undefined;
  readonly site?: unknown | undefined;
  readonly preference?: Preference | undefined;
  readonly constraints?: PlanConstraints | undefined;
  /** Units that the papers print. */
  readonly paper_units?: UnitSystem | undefined;
}

export function changeEnquiry(context: Context, edit: EnquiryEdit): Result<{ readonly version: number }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const before = readEnquiry(context, edit.enquiryId);
  if (!before.ok) return before;
  if (edit.site !== undefined) {
    const site = parseSite(edit.site, { startsOn: today(context) });
    if (!site.ok) return site;
  }
  const at = timestamp(context);
  const done = context.database.db.transaction(
    (tx): Result<{ readonly version: number }> => {
      const done = changeRow(tx, {
        id: edit.enquiryId,
        at,
        set: columnsOf(edit),
        ...(edit.version === undefined ? {} : { version: edit.version }),
      });
      if (!done) {
        return failed({
          code: 'changed-meanwhile',
          sentence:
            'Somebody else changed this enquiry while you were working. Load it again: your text is kept in the form until you do.',
        });
      }
      addAuditEntry(tx, {
        at,
        who: context.actor,
        action: 'enquiry changed',
        subject: `enquiry ${edit.enquiryId}`,
        detail_json: JSON.stringify(columnsOf(edit)),
      });
      insertScheduleChange(tx, {
        ...{ enquiry_id: edit.enquiryId, at, who: context.actor.name, who_id: context.actor.id },
        ...{ screen: context.screen ?? '', kind: 'enquiry', detail_json: '{}' },
      });
      return ok({ version: (edit.version ?? before.value.row.version) + 1 });
    },
    { behavior: 'immediate' },
  );
  if (done.ok) announceChange(edit.enquiryId);
  return done;
}

function columnsOf(edit: EnquiryEdit): EnquiryChange {
  return {
    ...(edit.title === undefined ? {} : { title: edit.title.trim() }),
    ...(edit.site === undefined ? {} : { site_json: JSON.stringify(edit.site) }),
    ...(edit.preference === undefined ? {} : { preference: edit.preference }),
    ...(edit.paper_units === undefined ? {} : { paper_units: edit.paper_units }),
    ...(edit.constraints === undefined
      ? {}
      : { constraints_json: JSON.stringify(constraintsToJson(edit.constraints)) }),
  };
}
