/*
 * Takes other terms over that an enquiry was tried under: its days, crews, start or parts; the plan is then worked out anew.
 * Invariant: only terms that were really planned can be taken; the answer undoes it.
 * Not here: trying terms (study-enquiry.ts).
 * Read next: ../enquiries/change-enquiry.ts, apply-repair.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { CaseChange } from '#lib/planning/try-cases.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { changeEnquiry } from '#lib/services/enquiries/change-enquiry.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { readStudy, type StudyKind } from '#lib/services/plans/study-enquiry.ts';
import type { RepairApplied } from './apply-repair.ts';

export interface AdoptRequest {
  readonly enquiryId: number;
  readonly kind: StudyKind;
  readonly key: string;
}

export function adoptCase(context: Context, request: AdoptRequest): Result<RepairApplied> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const { enquiryId } = request;
  const enquiry = readEnquiry(context, enquiryId);
  if (!enquiry.ok) return enquiry;
  const study = readStudy(context, request);
  if (!study.ok) return study;
  const found = study.value.cases.find(({ key }) => key === request.key);
  if (found === undefined || !canBeTaken(found.change))
    return failed({
      code: 'no-such-case',
      sentence: 'These terms were not worked out, or nothing here can bring them about. Load the page again.',
    });
  const before: unknown = JSON.parse(enquiry.value.row.site_json);
  const { constraints } = enquiry.value;
  const site = siteWith(before, found.change);
  const again = found.change.again ?? [];
  const changed = changeEnquiry(context, {
    enquiryId,
    site,
    constraints: { ...constraints, excludedParts: constraints.excludedParts.filter((part) => !again.includes(part)) },
  });
  if (!changed.ok) return changed;
  return ok({ lines: 0, version: changed.value.version, undo: { edits: [], enquiry: { site: before, constraints } } });
}

/** More pieces are for somebody to buy or bring; leaving a part out is a choice of its own. */
export function canBeTaken({ days, crews, startsOn, again }: CaseChange): boolean {
  return days !== undefined || crews !== undefined || startsOn !== undefined || again !== undefined;
}

function siteWith(before: unknown, { days, crews, startsOn }: CaseChange): Readonly<Record<string, unknown>> {
  return {
    ...(before !== null && typeof before === 'object' ? before : {}),
    ...(days === undefined ? {} : { days }),
    ...(crews === undefined ? {} : { crews }),
    ...(startsOn === undefined ? {} : { starts_on: startsOn }),
  };
}
