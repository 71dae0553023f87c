/*
 * The whole chain from lines to plans, as one function of plain data: duties, choices, plans, kits with their accessories.
 * Invariant: the same input gives the same plans; nothing here reads a database, a clock (but for timings) or the environment.
 * Not here: prices and papers (lib/services).
 * Read next: worked-out.ts, ../workers/solve-worker.ts.
 */

import { checkAssembly } from '#lib/checking/check-assembly.ts';
import { checkPlan } from '#lib/checking/check-plan.ts';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { CrewKit, FleetItem, FleetPlan, ItemNeed, LineClass, Served } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { findShortage, type Shortage } from '#lib/fleet/find-shortage.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import { planFleet } from '#lib/fleet/plan-fleet.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { crewAccessories } from '#lib/kits/accessories.ts';
import { buildAssembly } from '#lib/kits/build-assembly.ts';
import { type Choices, findChoices, type LineDuty } from '#lib/kits/find-choices.ts';
import { partsOf } from '#lib/kits/parts-of.ts';
import { toMinor } from '#lib/money/money.ts';
import { minutes } from '#lib/units/quantity.ts';
import { pairDuties, poseProblem } from './pose-problem.ts';
import { shareOutLines } from './share-out-lines.ts';
import type { PlannedKit, PlanOutcome, WorkedOut, WorkOutInput } from './worked-out.ts';

export async function workOut(input: WorkOutInput, onProgress?: (note: string) => void): Promise<WorkedOut> {
  const timings: Record<string, number> = {};
  const timed = stopwatch(timings);
  const duties = timed('duty', () => assessDuties({ lines: input.lines, site: input.site }));
  const lineDuties = pairDuties(input.lines, duties);
  onProgress?.('Duties are worked out; looking for what fits.');
  const choices = timed('kits', () =>
    findChoices({ lines: lineDuties, site: input.site, models: input.models, constraints: input.constraints }),
  );
  const plans: PlanOutcome[] = [];
  const problem = poseProblem(input, choices.classes);
  const { items } = problem;
  for (const preference of input.preferences) {
    onProgress?.(`Planning for ${preference}.`);
    const started = performance.now();
    const fleet = await planFleet({ ...problem, preference });
    timings[`plan ${preference}`] = Math.round(performance.now() - started);
    plans.push(timed(`settle ${preference}`, () => settle({ input, choices, lineDuties, items, fleet })));
  }
  const shortage = await shortageOf({ problem, plans, timings });
  return {
    duties: lineDuties.map(({ duty }) => duty),
    classes: choices.classes.map(({ id, tags, qty }) => ({ id, tags, qty })),
    plans,
    unserved: choices.unserved,
    shortage,
    effort: choices.effort,
    timings,
  };
}

function stopwatch(timings: Record<string, number>): <Value>(name: string, run: () => Value) => Value {
  return (name, run) => {
    const started = performance.now();
    const value = run();
    timings[name] = Math.round((performance.now() - started) * 10) / 10;
    return value;
  };
}

interface ShortageInput {
  readonly problem: Omit<FleetProblem, 'preference'>;
  readonly plans: readonly PlanOutcome[];
  readonly timings: Record<string, number>;
}

/** Asked once, of the first plan: which valves are served is the same for every preference. */
async function shortageOf({ problem, plans, timings }: ShortageInput): Promise<Shortage | null> {
  const plan = plans[0]?.fleet;
  if (!plan || plan.served === plan.asked) return null;
  const started = performance.now();
  const shortage = await findShortage({ problem: { ...problem, preference: plan.preference }, plan });
  timings.shortage = Math.round(performance.now() - started);
  return shortage;
}

interface Settling {
  readonly input: WorkOutInput;
  readonly choices: Choices;
  readonly lineDuties: readonly LineDuty[];
  readonly items: readonly FleetItem[];
  readonly fleet: FleetPlan;
}

/** Turns the numbers of a plan back into assemblies, kits with accessories, and lines; and has all of it checked. */
function settle({ input, choices, lineDuties, items, fleet }: Settling): PlanOutcome {
  const byTag = new Map(lineDuties.map((lineDuty) => [lineDuty.line.tag, lineDuty]));
  const assemblies: Record<string, Assembly> = {};
  const discrepancies: string[] = [];
  const work = fleet.work.map((served) => {
    const lineClass = classOf(choices.classes, served);
    const lineDuty = byTag.get(lineClass.tags[0] ?? '');
    invariant(lineDuty, `Class ${lineClass.id} has no line.`);
    const parts = partsOf({ classId: served.classId, served, choices });
    const assembly = buildAssembly({ lineDuty, site: input.site, models: input.models, parts });
    const key = `${served.classId}|${assembly.id}`;
    if (!(key in assemblies)) {
      for (const found of checkAssembly({ lineDuty, site: input.site, models: input.models, assembly }))
        discrepancies.push(found.sentence);
    }
    assemblies[key] = assembly;
    return { ...served, assembly: key };
  });
  for (const found of checkPlan({
    classes: choices.classes,
    items,
    crews: input.site.crews,
    secondsPerCrew: minutes(input.site.shiftHours * 60 * input.site.days),
    labour_minor_per_hour: toMinor(input.labour_minor_per_hour),
    plan: fleet,
  })) {
    discrepancies.push(found.sentence);
  }
  const kits = fleet.kits.map((kit) =>
    fullKit({ kit, input, work: work.filter((served) => served.crew === kit.crew), assemblies }),
  );
  return {
    preference: fleet.preference,
    fleet,
    kits,
    work,
    assemblies,
    lines: shareOutLines({ classes: choices.classes, lineDuties, work }),
    discrepancies,
  };
}

function classOf(classes: readonly LineClass[], served: Served): LineClass {
  const found = classes.find(({ id }) => id === served.classId);
  invariant(found, `The plan names class ${served.classId}, which was never offered.`);
  return found;
}

interface KitInput {
  readonly kit: CrewKit;
  readonly input: WorkOutInput;
  readonly work: readonly (Served & { readonly assembly: string })[];
  readonly assemblies: Readonly<Record<string, Assembly>>;
}

function fullKit({ kit, input, work, assemblies }: KitInput): PlannedKit {
  const used = work.flatMap((served) => {
    const assembly = assemblies[served.assembly];
    return assembly ? [{ assembly, qty: served.qty }] : [];
  });
  const accessories = crewAccessories({ work: used, site: input.site, models: input.models });
  const items = mergeNeeds([...kit.items, ...accessories]);
  const models = new Map<string, Model>(input.models.map((model) => [model.number, model]));
  const mass = items.reduce((sum, need) => sum + (models.get(need.item)?.mass ?? 0) * need.count, 0);
  const pieces = items.reduce((sum, need) => sum + (models.get(need.item)?.counted ? 0 : need.count), 0);
  return { crew: kit.crew, items, time_s: kit.time, mass_kg: mass, pieces };
}

/** A crew works one valve at a time: the same item asked for twice is carried once, at the larger count. */
function mergeNeeds(needs: readonly ItemNeed[]): readonly ItemNeed[] {
  const counts = new Map<string, number>();
  for (const { item, count } of needs) counts.set(item, Math.max(counts.get(item) ?? 0, count));
  return [...counts].map(([item, count]) => ({ item, count })).sort((a, b) => (a.item < b.item ? -1 : 1));
}
