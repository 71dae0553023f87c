/*
 * One line in full: its duty with the calculation, the torque ladder, what the plan does with it, and other assemblies.
 * Invariant: everything is worked out from the line as it stands now, and checked; the plan's part says which plan it is from, and was checked with it.
 * Not here: editing (edit-cells.ts).
 * Read next: why-part.ts.
 */
import { linesBeside } from '#db/queries/schedule.ts';
import type { Drawing } from '#lib/documents/drawings/drawing.ts';
import { driveLine } from '#lib/documents/drawings/drive-line.ts';
import { torqueLadder } from '#lib/documents/drawings/torque-ladder.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Preference } from '#lib/equipment/choices.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import type { Reason } from '#lib/kits/why/reason.ts';
import { listSoundAssemblies } from '#lib/planning/list-sound-assemblies.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseModels, knownModels } from '#lib/services/house/house-facts.ts';
import { readPlan } from '#lib/services/plans/plan-enquiry.ts';
import { type LineKey, loadLine } from '#lib/services/schedule/load-line.ts';
import { dutyOf } from '#lib/services/schedule/schedule-record.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { type LineView, lineView } from './line-view.ts';
import { offersFor, type RepairOffer } from './repair-offers.ts';

export interface LineDetail {
  /** Ids of the lines before and after it in the schedule. */
  readonly beside: { readonly before: number | null; readonly after: number | null };
  readonly line: LineView;
  readonly duty: Duty;
  readonly ladder: Drawing;
  readonly planned: readonly {
    readonly preference: Preference;
    readonly crew: number;
    readonly assembly: Assembly;
    readonly picture: Drawing;
  }[];
  readonly assemblies: readonly Assembly[];
  readonly more: number;
  readonly unserved: LineUnserved | null;
}

/** Why nothing serves the line, as a tree, and what would change that. */
export interface LineUnserved {
  readonly reasons: Reason | null;
  readonly because: readonly Finding[];
  readonly repairs: readonly RepairOffer[];
}

const ASSEMBLIES_SHOWN = 12;

export function openLine(
  context: Context,
  input: LineKey & {
    /** Units that the pictures are lettered in. */
    readonly system?: UnitSystem;
  },
): Result<LineDetail> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const loaded = loadLine(context, input);
  if (!loaded.ok) return loaded;
  const { enquiry, record } = loaded.value;
  const { site, constraints, row: enquiryRow } = enquiry;
  const duty = dutyOf({ record, site, siteKey: enquiryRow.site_json });
  const models = houseModels(context, site.startsOn);
  const { system = 'si' } = input;
  const lineDuty = { line: record.line, duty };
  const listed = listSoundAssemblies({ lineDuty, site, models, constraints, limit: ASSEMBLIES_SHOWN });
  // A plan may hold models that were retired since.
  const known = knownModels(context, site.startsOn);
  const planned = plannedFor(context, { ...input, tag: record.line.tag }).map((part) => ({
    ...part,
    picture: driveLine({ assembly: part.assembly, models: known, line: record.line, duty, system }),
  }));
  const shown = planned[0]?.assembly ?? listed.assemblies[0];
  const none = listed.unserved;
  const { position } = record.row;
  return ok({
    beside: linesBeside(context.database.db, { enquiryId: input.enquiryId, position }),
    line: lineView(record, duty),
    duty,
    ladder: torqueLadder({ duty, system, ...(shown ? { assembly: shown, models: known } : {}) }),
    planned,
    assemblies: listed.assemblies,
    more: listed.more,
    unserved: none
      ? {
          because: none.because,
          reasons: none.reasons ?? null,
          repairs: offersFor(context, {
            enquiry,
            record,
            tag: record.line.tag,
            repairs: none.repairs,
          }),
        }
      : null,
  });
}

function plannedFor(context: Context, key: { readonly enquiryId: number; readonly tag: string }) {
  const worked = readPlan(context, key.enquiryId);
  return (worked?.plans ?? []).flatMap((plan) => {
    const part = plan.lines.find((line) => line.tag === key.tag)?.parts[0];
    const assembly = part ? plan.assemblies[part.assembly] : undefined;
    return part && assembly ? [{ preference: plan.preference, crew: part.crew, assembly }] : [];
  });
}
