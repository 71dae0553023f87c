/*
 * Carries out a repair that was offered for lines nothing serves: cells, facts of the site, choices on the plan, all together.
 * Invariant: only a repair that is still offered is carried out, and only on lines that the whole chain then serves; the answer undoes it.
 * Not here: which repairs there are (../../kits/why/repairs.ts) and planning anew (plan-enquiry.ts).
 * Read next: repair-offers.ts, ../schedule/edit-cells.ts, ../enquiries/change-enquiry.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import type { PlanConstraints } from '#lib/contracts/constraints.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { findChoices } from '#lib/kits/find-choices.ts';
import type { RepairStep } from '#lib/kits/why/repair-step.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { changeEnquiry } from '#lib/services/enquiries/change-enquiry.ts';
import { type EnquiryRecord, readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { houseModels } from '#lib/services/house/house-facts.ts';
import { type CellEdit, editCells } from '#lib/services/schedule/edit-cells.ts';
import { dutyOf, type LineRecord, readSchedule } from '#lib/services/schedule/schedule-record.ts';
import { constraintsAfter, servesWith, siteAfter } from './repair-offers.ts';

export interface RepairRequest {
  readonly enquiryId: number;
  /** The lines by their tags in the plan, or by id. */
  readonly tags?: readonly string[] | undefined;
  readonly lineIds?: readonly number[] | undefined;
  /** The sentence of the repair, as it was offered. */
  readonly repair: string;
}

/** What to send to the lines and to the enquiry to take it back. */
export interface RepairUndo {
  readonly edits: readonly CellEdit[];
  readonly enquiry: { readonly site?: unknown; readonly constraints?: PlanConstraints } | null;
}

export interface RepairApplied {
  readonly lines: number;
  readonly version: number;
  readonly undo: RepairUndo;
}

interface Aim {
  readonly record: LineRecord;
  readonly tag: string;
}

export function applyRepair(context: Context, request: RepairRequest): Result<RepairApplied> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, request.enquiryId);
  if (!enquiry.ok) return enquiry;
  const aims = aimsOf(context, { enquiry: enquiry.value, request });
  const [first] = aims;
  if (first === undefined)
    return failed({
      code: 'no-such-line',
      sentence: 'None of these lines is there any more; go back to the schedule.',
    });
  const steps = stepsOf(context, { enquiry: enquiry.value, aim: first, repair: request.repair });
  if (steps === undefined)
    return failed({
      code: 'repair-gone',
      sentence:
        'That change is not offered for this line any more: the line, the site or the equipment has changed since. Load the page again.',
    });
  const helped = aims.filter((aim) => servesWith(context, { enquiry: enquiry.value, ...aim, steps }));
  if (helped.length === 0)
    return failed({
      code: 'repair-does-not-help',
      sentence:
        'Nothing was changed: with what else is written in the line, this change alone does not make it possible. Open the line and look at its findings.',
    });
  return ok(save(context, { enquiry: enquiry.value, helped, steps, repair: request.repair }));
}

function aimsOf(
  context: Context,
  at: { readonly enquiry: EnquiryRecord; readonly request: RepairRequest },
): readonly Aim[] {
  const records = readSchedule(context, at.enquiry);
  const lines = uniqueTags(records.map(({ line, row }) => ({ line, row: row.row })));
  const { tags = [], lineIds = [] } = at.request;
  return records.flatMap((record, index) => {
    const tag = lines[index]?.tag ?? record.line.tag;
    return lineIds.includes(record.row.id) || tags.includes(tag) ? [{ record, tag }] : [];
  });
}

/** Found again from the line as it stands now, so that nobody can ask for steps of their own. */
function stepsOf(
  context: Context,
  at: { readonly enquiry: EnquiryRecord; readonly aim: Aim; readonly repair: string },
): readonly RepairStep[] | undefined {
  const { site, constraints, row } = at.enquiry;
  const { record, tag } = at.aim;
  const duty = dutyOf({ record, site, siteKey: row.site_json });
  const lines = [{ line: { ...record.line, tag }, duty }];
  const { unserved } = findChoices({ lines, site, models: houseModels(context), constraints, told: 'in full' });
  return unserved[0]?.repairs.find(({ sentence }) => sentence === at.repair)?.steps;
}

interface Saving {
  readonly enquiry: EnquiryRecord;
  readonly helped: readonly Aim[];
  readonly steps: readonly RepairStep[];
  readonly repair: string;
}

function save(context: Context, { enquiry, helped, steps, repair }: Saving): RepairApplied {
  const enquiryId = enquiry.row.id;
  const edits = helped.flatMap(({ record }) =>
    steps.flatMap((step) =>
      step.kind === 'cell' ? [{ lineId: record.row.id, column: step.column, text: step.text }] : [],
    ),
  );
  const site = steps.some(({ kind }) => kind === 'site') ? siteAfter(enquiry, steps) : undefined;
  const isFreed = steps.some(({ kind }) => kind === 'release' || kind === 'use again');
  const tags = helped.map(({ tag }) => tag);
  const constraints = isFreed ? constraintsAfter({ constraints: enquiry.constraints, steps, tags }) : undefined;
  const isWider = site !== undefined || constraints !== undefined;
  return context.database.db.transaction(
    (tx) => {
      const edited = edits.length === 0 ? undefined : editCells(context, { enquiryId, edits });
      if (isWider) changeEnquiry(context, { enquiryId, site, constraints });
      addAuditEntry(tx, {
        at: timestamp(context),
        who: context.actor,
        action: 'repair applied',
        subject: `enquiry ${enquiryId}`,
        detail_json: JSON.stringify({ repair, tags, steps }),
      });
      const after = readEnquiry(context, enquiryId);
      return {
        lines: helped.length,
        version: after.ok ? after.value.row.version : enquiry.row.version,
        undo: {
          edits: edited?.ok ? edited.value.undo : [],
          enquiry: isWider
            ? {
                ...(site === undefined ? {} : { site: JSON.parse(enquiry.row.site_json) }),
                ...(constraints === undefined ? {} : { constraints: enquiry.constraints }),
              }
            : null,
        },
      };
    },
    { behavior: 'immediate' },
  );
}
