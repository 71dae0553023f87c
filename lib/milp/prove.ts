/*
 * Proves by own branching that nothing beats a known objective: every leaf is closed by a certified bound or a certified emptiness.
 * Invariant: "proven" rests on arithmetic done here, never on a solver's word; a better point found on the way is handed back.
 * Not here: finding the good answer in the first place (solve.ts).
 * Read next: certificate.ts.
 */
import type { Model } from 'highs';
import { checkValues } from './check-values.ts';
import { withSolver } from './highs-runtime.ts';
import { type Relaxed, runRelaxation } from './relaxation.ts';
import { at, type SparseModel } from './sparse-model.ts';

export interface ProofRequest {
  readonly model: SparseModel;
  /** What is to be proven best. */
  readonly objective: number;
  /** How much better a point must be to count as beating it. */
  readonly margin: number;
  readonly nodes: number;
  readonly seconds: number;
  /** Columns with a higher number are branched on first. */
  readonly priority?: Uint8Array;
}

export type Proof =
  | { readonly kind: 'proven'; readonly bound: number; readonly nodes: number; readonly iterations: number; readonly seconds: number }
  | {
      readonly kind: 'beaten';
      readonly values: Float64Array;
      readonly objective: number;
      readonly nodes: number;
      readonly iterations: number;
      readonly seconds: number;
    }
  /** The budget ran out; the bound is still certified. */
  | { readonly kind: 'open'; readonly bound: number; readonly nodes: number; readonly iterations: number; readonly seconds: number };

export async function proveNoBetter(request: ProofRequest): Promise<Proof> {
  const answer = await withSolver({
    model: request.model,
    relax: 'integers dropped',
    options: { presolve: 'off', time_limit: request.seconds },
    work: (solver) => search(request, solver),
  });
  return answer.ok
    ? answer.value
    : { kind: 'open', bound: Number.NEGATIVE_INFINITY, nodes: 0, iterations: 0, seconds: 0 };
}

/** A change of bounds, with what must be put back. */
interface Node {
  readonly fixes: readonly { readonly column: number; readonly lower: number; readonly upper: number }[];
  readonly parentBound: number;
}

function search(request: ProofRequest, solver: Model): Proof {
  const { model } = request;
  const cutoff = request.objective - request.margin;
  const open: Node[] = [{ fixes: [], parentBound: Number.NEGATIVE_INFINITY }];
  let nodes = 0;
  let iterations = 0;
  let proven = request.objective;
  const seconds = () => solver.getRunTime();
  const openBound = () => open.reduce((least, node) => Math.min(least, node.parentBound), proven);
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (nodes >= request.nodes || seconds() >= request.seconds) {
      open.push(node);
      return { kind: 'open', bound: openBound(), nodes, iterations, seconds: seconds() };
    }
    nodes += 1;
    const bounds = applyFixes(solver, model, node);
    const relaxed = runRelaxation({ solver, model, bounds });
    iterations += relaxed.iterations;
    if (relaxed.kind === 'empty') continue;
    if (relaxed.kind === 'bounded' && relaxed.bound >= cutoff) {
      proven = Math.min(proven, Math.max(relaxed.bound, node.parentBound));
      continue;
    }
    const step = branch({ request, node, relaxed, bounds });
    if (step.kind === 'beaten') return { ...step, nodes, iterations, seconds: seconds() };
    if (step.kind === 'stuck') {
      open.push(node);
      return { kind: 'open', bound: openBound(), nodes, iterations, seconds: seconds() };
    }
    if (step.kind === 'closed') proven = Math.min(proven, step.bound);
    else open.push(...step.children);
  }
  return { kind: 'proven', bound: proven, nodes, iterations, seconds: seconds() };
}

function applyFixes(solver: Model, model: SparseModel, node: Node): { lower: Float64Array; upper: Float64Array } {
  const lower = Float64Array.from(model.columnLower);
  const upper = Float64Array.from(model.columnUpper);
  for (const fix of node.fixes) {
    lower[fix.column] = Math.max(at(lower, fix.column), fix.lower);
    upper[fix.column] = Math.min(at(upper, fix.column), fix.upper);
  }
  solver.changeColsBounds({ kind: 'range', from: 0, to: model.columns - 1 }, lower, upper);
  return { lower, upper };
}

type Step =
  | { readonly kind: 'beaten'; readonly values: Float64Array; readonly objective: number }
  | { readonly kind: 'children'; readonly children: readonly Node[] }
  | { readonly kind: 'closed'; readonly bound: number }
  | { readonly kind: 'stuck' };

function branch(request: {
  readonly request: ProofRequest;
  readonly node: Node;
  readonly relaxed: Relaxed;
  readonly bounds: { readonly lower: Float64Array; readonly upper: Float64Array };
}): Step {
  const { relaxed, node } = request;
  if (relaxed.kind !== 'bounded' || !relaxed.finished) return { kind: 'stuck' };
  const { model, objective, margin } = request.request;
  const column = columnToBranchOn(request.request, relaxed.values);
  if (column === undefined) {
    const checked = checkValues(model, relaxed.values);
    if (checked.kind === 'unsound') return { kind: 'stuck' };
    if (checked.objective < objective - margin) return { kind: 'beaten', values: checked.values, objective: checked.objective };
    // The leaf's own best point is no better than what is known; its certified bound may lie a hair under the cutoff.
    return checked.objective - relaxed.bound <= margin ? { kind: 'closed', bound: relaxed.bound } : { kind: 'stuck' };
  }
  const value = at(relaxed.values, column);
  const parentBound = Math.max(node.parentBound, relaxed.bound);
  const down: Node = {
    fixes: [...node.fixes, { column, lower: Number.NEGATIVE_INFINITY, upper: Math.floor(value) }],
    parentBound,
  };
  const up: Node = {
    fixes: [...node.fixes, { column, lower: Math.ceil(value), upper: Number.POSITIVE_INFINITY }],
    parentBound,
  };
  // The last one pushed is looked at first: the side that the relaxation leans to.
  return { kind: 'children', children: value - Math.floor(value) > 0.5 ? [down, up] : [up, down] };
}

/** The most fractional column of the highest priority. */
function columnToBranchOn(request: ProofRequest, values: Float64Array): number | undefined {
  let best: number | undefined;
  let bestScore = 0;
  for (let column = 0; column < request.model.columns; column += 1) {
    if (at(request.model.integer, column) === 0) continue;
    const value = at(values, column);
    const distance = Math.abs(value - Math.round(value));
    if (distance <= 1e-6) continue;
    const score = (request.priority === undefined ? 0 : at(request.priority, column)) + distance;
    if (score > bestScore) {
      bestScore = score;
      best = column;
    }
  }
  return best;
}

