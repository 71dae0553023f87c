/*
 * Solves one stage of a plan: one aim, the earlier ones settled, with a bound and an honest word on what it rests on.
 * Invariant: `certified` rests on bounds worked out here; `agreed` on two solver runs of different kind; `claimed` on one.
 * Not here: the order of stages (plan-fleet.ts) and finding a first plan (search-plan.ts).
 * Read next: ../milp/prove.ts.
 */
import { proveNoBetter } from '#lib/milp/prove.ts';
import { relax } from '#lib/milp/relaxation.ts';
import { type MilpAnswer, solveMilp } from '#lib/milp/solve.ts';
import { at } from '#lib/milp/sparse-model.ts';
import { buildModel, type FleetModel, type ModelRequest } from './build-model.ts';
import type { FleetProgress } from './fleet-problem.ts';
import { isWithinLimits } from './measure.ts';
import { type Aim, type Program, type Solution } from './program.ts';
import { readSolution, writeStart } from './read-solution.ts';

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
  readonly onProgress: (progress: FleetProgress) => void;
  readonly interrupt: () => boolean;
}

export interface StageRequest {
  readonly program: Program;
  readonly aim: Aim;
  readonly settled: ModelRequest['settled'];
  readonly unserved: number | null;
  readonly start: Solution;
  readonly meter: Meter;
}

/** A plan is called best when nothing can be better by more than one part in a million. */
export const PROOF_GAP = 1e-6;
/** Nodes that own branching may take before a second solver run is the cheaper check. */
const OWN_NODES = 400;

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
  const modelRequest = { program, aim, settled: request.settled, unserved: request.unserved };
  const full = buildModel(modelRequest);
  count(meter, 'columns', full.sparse.columns);
  const relaxed = await relax({ model: full.sparse, seconds: meter.seconds });
  const offset = aim === 'unserved' ? program.jobs.reduce((sum, job) => sum + job.qty, 0) : 0;
  const work: Work = { request, model: full, offset, margin: marginFor(aim, start), best: start, bound: Number.NEGATIVE_INFINITY };
  if (!relaxed.ok) return ended(work, 'open');
  meter.seconds -= relaxed.value.seconds;
  if (relaxed.value.relaxed.kind !== 'bounded') return search(work);
  const { bound, reducedCost, iterations } = relaxed.value.relaxed;
  count(meter, 'relaxation iterations', iterations);
  work.bound = wholeBound(aim, bound + offset);
  meter.onProgress({ best: start.measures[aim], bound: work.bound });
  if (isClosed(work)) return ended(work, 'certified');
  const excluded = ruledOut({ program, model: full, reducedCost, slack: start.measures[aim] - offset - bound });
  count(meter, 'items ruled out', excluded.size);
  return search({ ...work, model: excluded.size === 0 ? full : buildModel({ ...modelRequest, excluded }) });
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
  for (let round = 0; round < 3; round += 1) {
    const proof = await ownProof(work);
    if (proof === 'proven') return ended(work, 'certified');
    if (proof === 'open') break;
  }
  if (work.request.meter.seconds <= 0) return firstWord;
  const second = await runSolver(work, 'on');
  const before = work.best.measures[work.request.aim];
  const secondWord = takeAnswer(work, second);
  const isAgreed = secondWord.standing === 'claimed' && Math.abs(work.best.measures[work.request.aim] - before) <= 1e-6 * Math.max(1, Math.abs(before));
  if (isAgreed) return { ...secondWord, bound: Math.min(firstWord.bound, secondWord.bound), standing: 'agreed' };
  return { ...firstWord, solution: work.best, standing: 'claimed' };
}

async function runSolver(work: Work, presolve: 'on' | 'off'): Promise<MilpAnswer> {
  const { request, model, offset } = work;
  const { meter, program, aim } = request;
  const answer = await solveMilp(model.sparse, {
    presolve,
    gap: isWhole(aim) ? 0 : PROOF_GAP,
    margin: work.margin,
    seconds: Math.max(0.05, meter.seconds),
    nodes: meter.nodes,
    start: writeStart({ program, model, solution: work.best }),
    interrupt: (seen) => {
      meter.onProgress({
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

/** Takes over a better plan, and says what the answer is worth so far. */
function takeAnswer(work: Work, answer: MilpAnswer): Stage {
  const { aim, meter } = work.request;
  if (answer.kind === 'failed' || answer.kind === 'unbounded') return ended(work, 'open');
  // The start is a plan: a solver that finds none has used a different tolerance or is wrong.
  if (answer.kind === 'infeasible') return ended(work, 'open');
  if (answer.kind === 'solved') takeValues(work, answer.values);
  const claimed = Math.max(work.bound, wholeBound(aim, answer.bound + work.offset));
  const bound = Math.min(claimed, work.best.measures[aim]);
  meter.onProgress({ best: work.best.measures[aim], bound });
  const isDone = answer.kind === 'solved' && answer.stop === 'gap reached';
  if (isDone) return { solution: work.best, bound, standing: 'claimed' };
  const isHalted = answer.stop === 'time used up' || answer.stop === 'interrupted';
  return { solution: work.best, bound, standing: isHalted ? 'halted' : 'open' };
}

function takeValues(work: Work, values: Float64Array): void {
  const { program, aim, settled, start } = work.request;
  const found = readSolution({ program, model: work.model, values });
  const keepsTo = settled.every((one) => found.measures[one.aim] <= one.most + 1e-6 * Math.max(1, Math.abs(one.most)));
  const isSound = isWithinLimits(program, found) && keepsTo;
  const servesAsMany = aim === 'unserved' || found.measures.unserved <= start.measures.unserved;
  if (isSound && servesAsMany && found.measures[aim] < work.best.measures[aim]) work.best = found;
}

async function ownProof(work: Work): Promise<'proven' | 'open' | 'again'> {
  const { meter, aim } = work.request;
  const objective = work.best.measures[aim];
  const proof = await proveNoBetter({
    model: work.model.sparse,
    objective: objective - work.offset,
    margin: work.margin,
    nodes: OWN_NODES,
    seconds: Math.max(0.05, meter.seconds),
    priority: work.model.priority,
  });
  meter.seconds -= proof.seconds;
  count(meter, 'proof nodes', proof.nodes);
  count(meter, 'proof iterations', proof.iterations);
  if (proof.kind === 'beaten') {
    takeValues(work, proof.values);
    return work.best.measures[aim] < objective ? 'again' : 'open';
  }
  const bound = wholeBound(aim, proof.bound + work.offset);
  work.bound = Math.max(work.bound, Math.min(bound, objective));
  return proof.kind;
}

function ended(work: Work, standing: Standing): Stage {
  return { solution: work.best, bound: Math.min(work.bound, work.best.measures[work.request.aim]), standing };
}

export function count(meter: Meter, name: string, amount: number): void {
  meter.effort[name] = (meter.effort[name] ?? 0) + amount;
}

