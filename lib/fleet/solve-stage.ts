/*
 * Solves one stage of a plan: one aim, the earlier ones settled, with a bound and an honest word on what it rests on.
 * Invariant: `certified` rests on bounds worked out here; `agreed` on two solver runs of different kind; `claimed` on one.
 * Not here: the order of stages (plan-fleet.ts) and finding a first plan (search-plan.ts).
 * Read next: ../milp/branch-and-bound.ts.
 */
import { branchAndBound } from '#lib/milp/branch-and-bound.ts';
import { checkValues } from '#lib/milp/check-values.ts';
import { relaxWithRows } from '#lib/milp/cut-loop.ts';
import { type MilpAnswer, solveMilp } from '#lib/milp/solve.ts';
import { at } from '#lib/milp/sparse-model.ts';
import { buildModel, cutRow, type FleetModel, type ModelRequest } from './build-model.ts';
import { type BusyCrews, busyCases, busyCrewsOf } from './busy-crews.ts';
import { type CrewCut, makeCutFinder } from './crew-cuts.ts';
import type { FleetProgress } from './fleet-problem.ts';
import { isWithinLimits } from './measure.ts';
import { type Aim, type Measures, type Program, pick, type Solution } from './program.ts';
import { readSolution, writeStart } from './read-solution.ts';
import { SEARCH_VISITS, searchFrom, searchPlan } from './search-plan.ts';
import { leastOfUses } from './settled.ts';

export type Standing = 'certified' | 'agreed' | 'claimed' | 'open' | 'halted';

export interface Stage {
  readonly solution: Solution | undefined;
  /** Of the aim; no plan that keeps to what is settled is below it. */
  readonly bound: number;
  readonly standing: Standing;
}

/** What is left of the budget, and what was used; one meter runs through all stages of a plan. */
export interface Meter {
  seconds: number;
  nodes: number;
  readonly effort: Record<string, number>;
  readonly interrupt: () => boolean;
}

export interface StageRequest {
  readonly program: Program;
  readonly aim: Aim;
  readonly settled: ModelRequest['settled'];
  readonly unserved: number | null;
  readonly start: Solution;
  readonly meter: Meter;
  /** Part of what is left of the budget that this stage may use. */
  readonly share: number;
  readonly onProgress?: ((progress: FleetProgress) => void) | undefined;
}

/** A plan is called best when nothing can be better by more than one part in a million. */
export const PROOF_GAP = 1e-6;
/** Rounds of crew rows on the first relaxation; later rounds add little. */
const CUT_ROUNDS = 20;
/** Part of the aim left open from which a long search is worth its time. */
const SEARCH_GAP = 2e-3;
/** What a relaxed point must carry of a piece for a plan made from it to use the piece. */
const PART_CARRIED = 0.02;
/** Job visits of one such attempt. */
const IMPROVE_VISITS = 20_000;

/** Everything a stage works with after its relaxation. */
interface Work {
  readonly request: StageRequest;
  readonly model: FleetModel;
  /** Added to a model's objective to give the measure of the aim. */
  readonly offset: number;
  /** How much better a plan must be to count as better. */
  readonly margin: number;
  best: Solution;
  /** Certified. */
  bound: number;
}

export async function solveStage(request: StageRequest): Promise<Stage> {
  const { program, aim, meter, start } = request;
  const modelRequest = {
    program,
    aim,
    settled: request.settled,
    unserved: request.unserved,
    crewsAlike: 'kept alike' as const,
  };
  const full = buildModel(modelRequest);
  count(meter, 'columns', full.sparse.columns);
  const offset = aim === 'unserved' ? program.jobs.reduce((sum, job) => sum + job.qty, 0) : 0;
  const work: Work = {
    request,
    model: full,
    offset,
    margin: marginFor(aim, start),
    best: start,
    // Holds whatever the solver does, also where the program is too large for it: pieces cost nothing at the least.
    bound: aim === 'unserved' ? Number.NEGATIVE_INFINITY : wholeBound(aim, leastOfUses(request)),
  };
  const cuts: CrewCut[] = [];
  const relaxed = await relaxWithCuts({ request, model: full, cuts });
  if (!relaxed.ok) return ended(work, 'open');
  meter.seconds -= relaxed.value.seconds;
  if (relaxed.value.relaxed.kind !== 'bounded') return search(work);
  const { bound, reducedCost, values, iterations } = relaxed.value.relaxed;
  count(meter, 'relaxation iterations', iterations);
  work.bound = Math.max(work.bound, wholeBound(aim, bound + offset));
  const checked = checkValues(full.sparse, values);
  if (checked.kind === 'sound') takeValues(work, checked.values);
  work.request.onProgress?.({ best: work.best.measures[aim], bound: work.bound });
  if (isClosed(work)) return ended(work, 'certified');
  searchOn(work, values);
  if (isClosed(work)) return ended(work, 'certified');
  const excluded = ruledOut({ program, model: full, reducedCost, slack: work.best.measures[aim] - offset - bound });
  count(meter, 'items ruled out', excluded.size);
  count(meter, 'crew rows', cuts.length);
  const busy = busyCrewsOf(request);
  const smaller = { ...work, model: buildModel({ ...modelRequest, excluded, cuts, busy }) };
  const own = await searchOurselves({ work: smaller, busy });
  if (own !== 'stuck') return ended(smaller, own);
  return search({ ...smaller, model: buildModel({ ...modelRequest, excluded, cuts, crewsAlike: 'anchored' }) });
}

/** The relaxation, with rows on what all crews need together where every valve is done. */
async function relaxWithCuts(request: {
  readonly request: StageRequest;
  readonly model: FleetModel;
  readonly cuts: CrewCut[];
}): ReturnType<typeof relaxWithRows> {
  const { model, cuts } = request;
  const { program, unserved, meter } = request.request;
  const finder = unserved === 0 && program.crews > 1 ? makeCutFinder(program) : undefined;
  return relaxWithRows({
    model: model.sparse,
    rounds: CUT_ROUNDS,
    seconds: meter.seconds,
    rowsFor: (values) => {
      const carried = program.items.map(() => 0);
      for (const { column, item, step, count: level } of model.kit) {
        if (step === level) carried[item] = pick(carried, item) + at(values, column);
      }
      const found = finder?.find(carried) ?? [];
      cuts.push(...found);
      return found.map((cut) => cutRow(model.kit, cut));
    },
  });
}

function marginFor(aim: Aim, start: Solution): number {
  return isWhole(aim) ? 0.999 : PROOF_GAP * Math.max(1, Math.abs(start.measures[aim]));
}

/** Valves and pieces are whole: less than one away is none away. */
function isWhole(aim: Aim): boolean {
  return aim === 'unserved' || aim === 'pieces';
}

function wholeBound(aim: Aim, bound: number): number {
  return isWhole(aim) ? Math.ceil(bound - 1e-6) : bound;
}

function isClosed(work: Work): boolean {
  const objective = work.best.measures[work.request.aim];
  return objective - work.bound <= PROOF_GAP * Math.max(1, Math.abs(objective));
}

/** Items that no plan better than the known one carries: bringing any of it in costs more than what is left to gain. */
function ruledOut(request: {
  readonly program: Program;
  readonly model: FleetModel;
  readonly reducedCost: Float64Array;
  readonly slack: number;
}): ReadonlySet<number> {
  const { program, model, reducedCost, slack } = request;
  const least = new Map<number, number>();
  for (const { column, item } of model.kit) {
    least.set(item, Math.min(least.get(item) ?? Number.POSITIVE_INFINITY, at(reducedCost, column)));
  }
  const margin = 1e-6 * Math.max(1, Math.abs(slack));
  const out = program.items.map((_, item) => item).filter((item) => (least.get(item) ?? 0) > slack + margin);
  return new Set(out);
}

async function search(work: Work): Promise<Stage> {
  const first = await runSolver(work, 'off');
  const firstWord = takeAnswer(work, first);
  if (firstWord.standing !== 'claimed') return firstWord;
  if (work.request.meter.seconds <= 0) return firstWord;
  const second = await runSolver(work, 'on');
  const before = work.best.measures[work.request.aim];
  const secondWord = takeAnswer(work, second);
  const isAgreed =
    secondWord.standing === 'claimed' &&
    Math.abs(work.best.measures[work.request.aim] - before) <= 1e-6 * Math.max(1, Math.abs(before));
  if (isAgreed) return { ...secondWord, bound: Math.min(firstWord.bound, secondWord.bound), standing: 'agreed' };
  return { ...firstWord, solution: work.best, standing: 'claimed' };
}

async function runSolver(work: Work, presolve: 'on' | 'off'): Promise<MilpAnswer> {
  const { request, model, offset } = work;
  const { meter, program, aim, share } = request;
  const answer = await solveMilp(model.sparse, {
    presolve,
    gap: isWhole(aim) ? 0 : PROOF_GAP,
    margin: work.margin,
    seconds: Math.max(0.05, meter.seconds * share),
    nodes: Math.max(1, Math.floor(meter.nodes * share)),
    start: writeStart({ program, model, solution: work.best }),
    interrupt: (seen) => {
      work.request.onProgress?.({
        best: Math.min(work.best.measures[aim], seen.best + offset),
        bound: Math.max(work.bound, seen.bound + offset),
      });
      return meter.interrupt();
    },
  });
  if (answer.kind === 'failed') return answer;
  meter.seconds -= answer.seconds;
  meter.nodes -= answer.effort.nodes;
  count(meter, 'nodes', answer.effort.nodes);
  count(meter, 'simplex iterations', answer.effort.simplexIterations);
  return answer;
}

/** From the relaxed point, and where that leaves much open by a long search: a better plan rules out more. */
function searchOn(work: Work, values: Float64Array): void {
  const { program, aim, settled, unserved, meter } = work.request;
  if (settled.length > 0 || aim === 'unserved' || unserved !== 0) return;
  improveFrom(work, values);
  if (work.best.measures[aim] - work.bound <= SEARCH_GAP * Math.abs(work.bound)) return;
  // Each crew more is a kit more to find.
  const found = searchPlan({ program, aim, visits: SEARCH_VISITS * program.crews });
  count(meter, 'search visits', found.visits);
  if (found.solution.measures.unserved === 0 && found.solution.measures[aim] < work.best.measures[aim]) {
    work.best = found.solution;
  }
}

/** Takes over a better plan, and says what the answer is worth so far. */
function takeAnswer(work: Work, answer: MilpAnswer): Stage {
  const { aim } = work.request;
  if (answer.kind === 'failed' || answer.kind === 'unbounded') return ended(work, 'open');
  // The start is a plan: a solver that finds none has used a different tolerance or is wrong.
  if (answer.kind === 'infeasible') return ended(work, 'open');
  if (answer.kind === 'solved') takeValues(work, answer.values);
  const claimed = Math.max(work.bound, wholeBound(aim, answer.bound + work.offset));
  const bound = Math.min(claimed, work.best.measures[aim]);
  work.request.onProgress?.({ best: work.best.measures[aim], bound });
  const isDone = answer.kind === 'solved' && answer.stop === 'gap reached';
  if (isDone) return { solution: work.best, bound, standing: 'claimed' };
  const isHalted = answer.stop === 'time used up' || answer.stop === 'interrupted';
  return { solution: work.best, bound, standing: isHalted ? 'halted' : 'open' };
}

function takeValues(work: Work, values: Float64Array): void {
  const { program, aim, settled, start } = work.request;
  const found = readSolution({ program, model: work.model, values });
  const isSound = isWithinLimits(program, found) && keepsTo(settled, found.measures);
  const servesAsMany = aim === 'unserved' || found.measures.unserved <= start.measures.unserved;
  if (isSound && servesAsMany && found.measures[aim] < work.best.measures[aim]) work.best = found;
}

/** Whether a plan is as good by the aims already settled; sums in another order differ in the last digits. */
function keepsTo(settled: ModelRequest['settled'], measures: Measures): boolean {
  return settled.every((one) => measures[one.aim] <= one.most + 1e-6 * Math.max(1, Math.abs(one.most)));
}

/** Own branching: a close is certified. */
async function searchOurselves(from: {
  readonly work: Work;
  readonly busy: BusyCrews | undefined;
}): Promise<Standing | 'stuck'> {
  const { work, busy } = from;
  const { meter, aim, share } = work.request;
  const answer = await branchAndBound({
    model: work.model.sparse,
    best: work.best.measures[aim] - work.offset,
    margin: work.margin,
    nodes: Math.max(1, Math.floor(meter.nodes * share)),
    seconds: meter.seconds * share,
    groups: work.model.busy.length > 0 ? [work.model.busy, ...kitGroups(work)] : kitGroups(work),
    ...(busy === undefined ? {} : { cases: busyCases({ ...work, busy }) }),
    onPoint: (values) => improveFrom(work, values),
    interrupt: (seen) => {
      work.request.onProgress?.({
        best: Math.min(work.best.measures[aim], seen.best + work.offset),
        bound: Math.max(work.bound, seen.bound + work.offset),
      });
      return meter.interrupt();
    },
  });
  meter.seconds -= answer.seconds;
  meter.nodes -= answer.nodes;
  count(meter, 'nodes', answer.nodes);
  count(meter, 'simplex iterations', answer.iterations);
  if (answer.values !== undefined) takeValues(work, answer.values);
  work.bound = Math.max(work.bound, wholeBound(aim, answer.bound + work.offset));
  work.request.onProgress?.({
    best: work.best.measures[aim],
    bound: Math.min(work.bound, work.best.measures[aim]),
  });
  // A point that the planner's own check would not take over must not count as found.
  const isTaken = work.best.measures[aim] <= answer.best + work.offset + work.margin;
  if (answer.kind === 'stuck' || !isTaken) return 'stuck';
  if (answer.kind === 'closed') return 'certified';
  return answer.kind === 'nodes used up' ? 'open' : 'halted';
}

/** For every item and count, its columns by crew. */
function kitGroups(work: Work): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>();
  for (const { column, item, count: level } of work.model.kit) {
    const group = groups.get(`${item} ${level}`);
    if (group === undefined) groups.set(`${item} ${level}`, [column]);
    else group.push(column);
  }
  return [...groups.values()];
}

/** Looks for a plan among the pieces that a relaxed point carries at least a part of. */
function improveFrom(work: Work, values: Float64Array): number | undefined {
  const { program, aim, settled, unserved, meter } = work.request;
  const kits = Array.from({ length: program.crews }, () => program.items.map(() => 0));
  for (const { column, crew, item, count: level } of work.model.kit) {
    const kit = pick(kits, crew);
    if (at(values, column) > PART_CARRIED) kit[item] = Math.max(pick(kit, item), level);
  }
  const found = searchFrom({ program, aim, before: settled[0]?.aim, kits, visits: IMPROVE_VISITS });
  count(meter, 'search visits', found.visits);
  const { measures } = found.solution;
  if (unserved !== null && measures.unserved > unserved) return undefined;
  if (!keepsTo(settled, measures)) return undefined;
  if (measures[aim] >= work.best.measures[aim]) return undefined;
  work.best = found.solution;
  return measures[aim] - work.offset;
}

function ended(work: Work, standing: Standing): Stage {
  return { solution: work.best, bound: Math.min(work.bound, work.best.measures[work.request.aim]), standing };
}

export function count(meter: Meter, name: string, amount: number): void {
  meter.effort[name] = (meter.effort[name] ?? 0) + amount;
}
