/*
 * Plans the fleet: as many valves as can be served, then the preference, then cost, each stage with its bound.
 * Invariant: every plan given out keeps hours and stock; "proven" never rests on one unchecked solver call.
 * Not here: what leaving an item out costs (leave-out.ts) and where stock is short (find-shortage.ts).
 * Read next: prepare.ts, then solve-stage.ts.
 */
import type { CrewKit, FleetPlan, Preference, Served } from '#lib/equipment/choices.ts';
import { invariant, unreachable } from '#lib/kernel/invariant.ts';
import { seconds } from '#lib/units/quantity.ts';
import type { FleetProblem } from './fleet-problem.ts';
import { isWithinLimits } from './measure.ts';
import { type Prepared, prepare } from './prepare.ts';
import { type Aim, optionsOf, type Program, pick, type Solution } from './program.ts';
import { type Found, isBetter, SEARCH_VISITS, searchFrom, searchPlan } from './search-plan.ts';
import { count, type Meter, PROOF_GAP, type Stage, type Standing, solveStage } from './solve-stage.ts';

/** Job visits of the first search, which only has to serve every valve: the relaxation often closes the rest. */
const FIRST_VISITS = 60_000;
/** Job visits of each of two searches for a cheaper plan that is as good by the preference. */
const TIE_VISITS = 500_000;
/** Parts of what is left of the budget that serving the most, and then a preference with ties to break, may use. */
const SERVED_SHARE = 0.3;
const MAIN_SHARE = 0.7;

export async function planFleet(problem: FleetProblem): Promise<FleetPlan> {
  const prepared = prepare(problem);
  const { program } = prepared;
  const meter = startMeter(problem);
  const aim = aimOf(problem.preference);
  const found = searchPlan({ program, aim, visits: FIRST_VISITS });
  count(meter, 'search visits', found.visits);
  const start = found.solution.measures.unserved === 0 ? found.solution : servesMore({ program, aim, found, meter });
  const served = await serveMost({ program, start, meter });
  const main = await stageFor({ program, aim, settled: [], first: served, meter, onProgress: problem.onProgress });
  const tie = aim === 'cost' ? undefined : await breakTie({ program, aim, main, meter });
  const solution = tie?.solution ?? main.solution;
  invariant(isWithinLimits(program, solution), 'A plan keeps every crew within its hours and the stock.');
  return toPlan({ problem, prepared, aim, served, main, tie, solution, meter });
}

function startMeter(problem: FleetProblem): Meter {
  const { budget, interrupt, now } = problem;
  const startedAt = now?.() ?? 0;
  return {
    seconds: budget.seconds,
    nodes: budget.nodes,
    effort: {},
    interrupt: () => interrupt?.() === true || (now !== undefined && now() - startedAt > budget.seconds),
  };
}

function aimOf(preference: Preference): Aim {
  switch (preference) {
    case 'cost':
    case 'pieces':
    case 'time':
      return preference;
    case 'surest':
      return 'second visits';
    default:
      return unreachable(preference);
  }
}

/** Where hours are short, a longer search may serve more, and one for the least time often does. */
function servesMore(request: {
  readonly program: Program;
  readonly aim: Aim;
  readonly found: Found;
  readonly meter: Meter;
}): Solution {
  const { program, aim, found, meter } = request;
  let best = found.solution;
  for (const sought of [aim, 'time'] as const) {
    const { solution, visits } = searchPlan({ program, aim: sought, visits: SEARCH_VISITS });
    count(meter, 'search visits', visits);
    if (isBetter(solution, best, aim)) best = solution;
  }
  return best;
}

interface Done {
  readonly solution: Solution;
  readonly bound: number;
  readonly standing: Standing;
}

async function serveMost(request: {
  readonly program: Program;
  readonly start: Solution;
  readonly meter: Meter;
}): Promise<Done> {
  const { program, start, meter } = request;
  if (start.measures.unserved === 0) return { solution: start, bound: 0, standing: 'certified' };
  return finish(
    start,
    await solveStage({ program, aim: 'unserved', settled: [], unserved: null, start, meter, share: SERVED_SHARE }),
  );
}

function finish(start: Solution, stage: Stage): Done {
  return { ...stage, solution: stage.solution ?? start };
}

async function stageFor(request: {
  readonly program: Program;
  readonly aim: Aim;
  readonly settled: readonly { readonly aim: Aim; readonly most: number }[];
  readonly first: Done;
  readonly meter: Meter;
  /** Told for the stage of the preference; the others would mix their units in. */
  readonly onProgress?: FleetProblem['onProgress'];
}): Promise<Done> {
  const { program, aim, settled, first, meter, onProgress } = request;
  const start = first.solution;
  const { unserved } = start.measures;
  const share = aim === 'cost' ? 1 : MAIN_SHARE;
  if (program.jobs.length === 0) return { solution: start, bound: 0, standing: 'certified' };
  if (meter.seconds <= 0) return { solution: start, bound: Number.NEGATIVE_INFINITY, standing: 'halted' };
  return finish(start, await solveStage({ program, aim, settled, unserved, start, meter, share, onProgress }));
}

/** The cheapest of the plans that are as good by the preference. */
async function breakTie(request: {
  readonly program: Program;
  readonly aim: Aim;
  readonly main: Done;
  readonly meter: Meter;
}): Promise<Done> {
  const { program, aim, main, meter } = request;
  const value = main.solution.measures[aim];
  // Sums in another order differ in the last digits; a tie is a tie within a billionth.
  const settled = [{ aim, most: value + 1e-9 * Math.max(1, Math.abs(value)) }];
  const first = { ...main, solution: cheaper({ program, aim, from: main.solution, meter }) };
  return stageFor({ program, aim: 'cost', settled, first, meter });
}

/** A cheaper plan as good by the preference, if a search finds one. */
function cheaper(request: {
  readonly program: Program;
  readonly aim: Aim;
  readonly from: Solution;
  readonly meter: Meter;
}): Solution {
  const { program, aim, from, meter } = request;
  const visits = TIE_VISITS;
  const found = [
    searchFrom({ program, aim: 'cost', before: aim, kits: from.kits, visits }),
    searchPlan({ program, aim: 'cost', before: aim, visits }),
  ];
  let best = from;
  for (const { solution, visits: used } of found) {
    count(meter, 'search visits', used);
    const { unserved, cost } = solution.measures;
    const isAsGood = unserved <= from.measures.unserved && solution.measures[aim] <= from.measures[aim];
    if (isAsGood && cost < best.measures.cost) best = solution;
  }
  return best;
}

interface Outcome {
  readonly problem: FleetProblem;
  readonly prepared: Prepared;
  readonly aim: Aim;
  readonly served: Done;
  readonly main: Done;
  readonly tie: Done | undefined;
  readonly solution: Solution;
  readonly meter: Meter;
}

function toPlan(outcome: Outcome): FleetPlan {
  const { problem, prepared, aim, served, main, tie, solution, meter } = outcome;
  // Breaking ties may better a preference that was cut short.
  const objective = solution.measures[aim];
  const slack = aim === 'second visits' ? prepared.chanceSlack : 0;
  const bound = Number.isFinite(main.bound) ? Math.min(objective, main.bound - slack) : 0;
  const gap = (objective - bound) / Math.max(1, Math.abs(objective));
  return {
    preference: problem.preference,
    served: prepared.possible - solution.measures.unserved,
    asked: prepared.asked,
    servedAtMost: prepared.possible - Math.max(0, served.bound),
    kits: kitsOf(prepared.program, solution),
    work: workOf(prepared.program, solution),
    cost_minor: solution.measures.cost,
    objective,
    bound,
    gap,
    ...(tie === undefined || !Number.isFinite(tie.bound)
      ? {}
      : { costAtLeast_minor: Math.min(tie.bound, solution.measures.cost) }),
    proof: proofOf({ stages: [served, main, ...(tie === undefined ? [] : [tie])], gap }),
    effort: { ...meter.effort },
  };
}

function proofOf(request: { readonly stages: readonly Done[]; readonly gap: number }): FleetPlan['proof'] {
  const standings = request.stages.map((stage) => stage.standing);
  if (standings.includes('halted')) return 'halted';
  if (standings.includes('open') || request.gap > 2 * PROOF_GAP) return 'bounded';
  return standings.includes('claimed') ? 'proven by an unchecked solver call' : 'proven';
}

function kitsOf(program: Program, solution: Solution): readonly CrewKit[] {
  return solution.kits.map((kit, crew) => ({
    crew,
    items: kit.map((count, item) => ({ item: pick(program.items, item).id, count })).filter(({ count }) => count > 0),
    time: seconds(pick(solution.times, crew)),
  }));
}

function workOf(program: Program, solution: Solution): readonly Served[] {
  return solution.uses.map((use) => {
    const [core, ...slots] = optionsOf(program, use);
    const job = pick(program.jobs, use.job);
    invariant(core !== undefined, 'Every assembly has a core.');
    return {
      classId: job.id,
      crew: use.crew,
      qty: use.qty,
      family: pick(job.branches, use.branch).family,
      core: core.id,
      slots: slots.map((slot) => slot.id),
    };
  });
}
