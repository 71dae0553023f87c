/*
 * The whole chain from lines to plans, as one function of plain data: duties, choices, plans, kits with their accessories.
 * Invariant: the same input gives the same plans; nothing here reads a database, a clock (but for timings) or the environment.
 * Not here: prices and papers (lib/services).
 * Read next: worked-out.ts, ../workers/solve-worker.ts.
 */

import { checkAssembly } from '#lib/checking/check-assembly.ts';
import { checkOutcome } from '#lib/checking/check-outcome.ts';
import { checkPlan } from '#lib/checking/check-plan.ts';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { FleetItem, FleetPlan, LineClass, Served } from '#lib/equipment/choices.ts';
import { findShortage, type Shortage } from '#lib/fleet/find-shortage.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import { planFleet } from '#lib/fleet/plan-fleet.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { buildAssembly } from '#lib/kits/build-assembly.ts';
import { type Choices, findChoices, type LineDuty } from '#lib/kits/find-choices.ts';
import { partsOf } from '#lib/kits/parts-of.ts';
import { toMinor } from '#lib/money/money.ts';
import { minutes } from '#lib/units/quantity.ts';
import { carryKits } from './carry-kits.ts';
import { crewDays } from './crew-days.ts';
import { pairDuties, poseProblem } from './pose-problem.ts';
import { shareOutLines } from './share-out-lines.ts';
import type { PlanOutcome, PlanProgress, WorkedOut, WorkOutInput } from './worked-out.ts';

/** What is told while it works, and how it is asked to stop. */
export interface Watch {
  readonly onNote?: (note: string) => void;
  readonly onProgress?: (progress: PlanProgress) => void;
  /** True keeps the best of the plan that is being made and leaves the others out. */
  readonly isHalted?: () => boolean;
  /** What would serve more is another plan, which is not always wanted. */
  readonly shortage?: 'not asked';
}

export async function workOut(input: WorkOutInput, watch: Watch = {}): Promise<WorkedOut> {
  const { onNote, onProgress, isHalted } = watch;
  const timings: Record<string, number> = {};
  const timed = stopwatch(timings);
  const duties = timed('duty', () => assessDuties({ lines: input.lines, site: input.site }));
  const lineDuties = pairDuties(input.lines, duties);
  onNote?.('Duties are worked out; looking for what fits.');
  const choices = timed('kits', () =>
    findChoices({ lines: lineDuties, site: input.site, models: input.models, constraints: input.constraints }),
  );
  const plans: PlanOutcome[] = [];
  const problem = poseProblem(input, choices.classes);
  const { items } = problem;
  for (const preference of input.preferences) {
    if (plans.length > 0 && isHalted?.() === true) break;
    onNote?.(`Planning for ${preference}.`);
    const started = performance.now();
    const fleet = await planFleet({
      ...problem,
      preference,
      ...(isHalted === undefined ? {} : { interrupt: isHalted }),
      ...(onProgress === undefined ? {} : { onProgress: (at) => onProgress({ preference, ...at }) }),
    });
    timings[`plan ${preference}`] = Math.round(performance.now() - started);
    plans.push(timed(`settle ${preference}`, () => settle({ input, choices, lineDuties, items, fleet })));
  }
  const isAsked = watch.shortage !== 'not asked' && isHalted?.() !== true;
  const shortage = !isAsked ? null : await shortageOf({ problem, plans, timings });
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
  const kits = carryKits({ ...input, kits: fleet.kits, work, assemblies });
  const lines = shareOutLines({ classes: choices.classes, lineDuties, work });
  const crewOffset = kits.some(({ crew }) => crew === 0) ? 1 : 0;
  const outcome = {
    preference: fleet.preference,
    fleet,
    kits,
    work,
    assemblies,
    lines,
    crewDays: crewDays({ ...input, lineDuties, lines, assemblies, crewOffset }),
  };
  const wrong = [
    ...checkPlan({
      classes: choices.classes,
      items,
      crews: input.site.crews,
      secondsPerCrew: minutes(input.site.shiftHours * 60 * input.site.days),
      labour_minor_per_hour: toMinor(input.labour_minor_per_hour),
      plan: fleet,
    }),
    ...checkOutcome({ ...input, classes: choices.classes, outcome }),
  ];
  return { ...outcome, discrepancies: [...discrepancies, ...wrong.map(({ sentence }) => sentence)] };
}

function classOf(classes: readonly LineClass[], served: Served): LineClass {
  const found = classes.find(({ id }) => id === served.classId);
  invariant(found, `The plan names class ${served.classId}, which was never offered.`);
  return found;
}
