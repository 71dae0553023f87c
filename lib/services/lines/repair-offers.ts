/*
 * Repairs of a line as a person is offered them: in words what a button would write, where the whole chain agrees that it helps.
 * Invariant: an action is offered for a line only after reading, duty and search have been run with it.
 * Not here: finding repairs (../../kits/why/repairs.ts) and carrying them out (apply-repair.ts).
 * Read next: apply-repair.ts.
 */
import type { PlanConstraints } from '#lib/contracts/constraints.ts';
import { parseSite } from '#lib/contracts/site.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { columnSpec, isColumn } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { findChoices } from '#lib/kits/find-choices.ts';
import type { RepairStep } from '#lib/kits/why/repair-step.ts';
import type { Repair } from '#lib/kits/why/repairs.ts';
import { type Context, today } from '#lib/services/context.ts';
import { type EnquiryRecord, withHouseRules } from '#lib/services/enquiries/enquiry-record.ts';
import { houseModels } from '#lib/services/house/house-facts.ts';
import type { LineRecord } from '#lib/services/schedule/schedule-record.ts';
import { siteKnowledge } from '#lib/services/visits/site-knowledge.ts';

export interface RepairOffer extends Repair {
  /** What the button writes; null where nothing here can do it. */
  readonly action: string | null;
  /** Whether other lines are touched by it. */
  readonly reach: 'this line' | 'all lines';
}

/** The offer as it is worded, before it is tried on a line. */
export function offerOf(repair: Repair): RepairOffer {
  const steps = repair.steps ?? [];
  const reach = steps.some(({ kind }) => kind === 'site' || kind === 'use again') ? 'all lines' : 'this line';
  return { ...repair, reach, action: steps.length === 0 ? null : actionOf(steps) };
}

interface OnLine {
  readonly enquiry: EnquiryRecord;
  readonly record: LineRecord;
  /** The tag that choices on the plan name it by. */
  readonly tag: string;
}

/** The repairs of one line; those that the whole chain does not confirm keep their sentence and lose their button. */
export function offersFor(
  context: Context,
  at: OnLine & { readonly repairs: readonly Repair[] },
): readonly RepairOffer[] {
  return at.repairs.map((repair) => {
    const offer = offerOf(repair);
    if (offer.action === null || servesWith(context, { ...at, steps: repair.steps ?? [] })) return offer;
    return { ...offer, action: null };
  });
}

/** Whether equipment is found for a line once these steps are taken; nothing is saved. */
export function servesWith(context: Context, at: OnLine & { readonly steps: readonly RepairStep[] }): boolean {
  const { enquiry, record, steps, tag } = at;
  const cells = { ...record.cells };
  for (const step of steps) if (step.kind === 'cell' && isColumn(step.column)) cells[step.column] = step.text;
  const read = parseSite(siteAfter(enquiry, steps), { startsOn: today(context) });
  if (!read.ok) return false;
  const site = withHouseRules(context, read.value);
  const { line: listed } = readLine({ row: record.row.row, cells, measured: record.measured });
  const known = siteKnowledge(context, { ...enquiry, site }).know({ line: listed, cells }).line;
  const line = { ...known, tag };
  const constraints = constraintsAfter({ constraints: enquiry.constraints, steps, tags: [tag] });
  const duty = assessDuty({ line, site });
  const { unserved } = findChoices({ lines: [{ line, duty }], site, models: houseModels(context), constraints });
  return unserved.length === 0;
}

/** The site as it is stored, with the steps taken. */
export function siteAfter({ row }: EnquiryRecord, steps: readonly RepairStep[]): Readonly<Record<string, unknown>> {
  const site: Record<string, unknown> = JSON.parse(row.site_json);
  for (const step of steps) if (step.kind === 'site') site[step.key] = step.value;
  return site;
}

export function constraintsAfter(at: {
  readonly constraints: PlanConstraints;
  readonly steps: readonly RepairStep[];
  readonly tags: readonly string[];
}): PlanConstraints {
  const named = (kind: RepairStep['kind']): ReadonlySet<string> =>
    new Set(at.steps.flatMap((step) => (step.kind === kind && 'parts' in step ? step.parts : [])));
  const released = named('release');
  const back = named('use again');
  const { lockedParts, excludedParts, pins } = at.constraints;
  return {
    lockedParts: lockedParts.filter((part) => !released.has(part)),
    excludedParts: excludedParts.filter((part) => !back.has(part)),
    pins: pins.filter(({ tag, part }) => !(released.has(part) && at.tags.includes(tag))),
  };
}

function actionOf(steps: readonly RepairStep[]): string {
  const words = steps.map(stepWords);
  const text = words.join(', and ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

const SITE_WORDS: Readonly<Record<string, string>> = {
  sources_allowed: 'power sources allowed',
  air_pressure: 'compressed air',
  vehicle_access: 'vehicles may come near',
  anchors_allowed: 'anchors allowed',
};

function stepWords(step: RepairStep): string {
  switch (step.kind) {
    case 'cell': {
      const label = isColumn(step.column) ? columnSpec(step.column).label.toLowerCase() : step.column;
      return `write “${step.text}” as ${label}`;
    }
    case 'site': {
      const { value } = step;
      const text =
        typeof value === 'boolean' ? (value ? 'yes' : 'no') : Array.isArray(value) ? value.join(', ') : value;
      return `set “${SITE_WORDS[step.key] ?? step.key}” of the site to ${text}`;
    }
    case 'release':
      return `no longer hold it to ${step.parts.join(', ')}`;
    case 'use again':
      return `use ${step.parts.join(', ')} again`;
  }
}
