/*
 * Own branch and bound on linear relaxations: every node is closed by a bound or an emptiness that is certified here.
 * Invariant: `closed` rests on arithmetic done here, never on a solver's word; interchangeable columns are branched on as orbits.
 * Not here: HiGHS's own search (solve.ts), the meaning of columns.
 * Read next: choose-branch.ts, certificate.ts.
 */
import type { Model } from 'highs';
import { checkValues } from './check-values.ts';
import { type Branching, chooseBranch, type Fix, makeGains } from './choose-branch.ts';
import { withSolver } from './highs-runtime.ts';
import { type Relaxed, runRelaxation } from './relaxation.ts';
import { at, type SparseModel } from './sparse-model.ts';

export interface BranchRequest {
  readonly model: SparseModel;
  /** Objective of the best point known; nothing is reported unless it is better by the margin. */
  readonly best: number;
  readonly margin: number;
  readonly nodes: number;
  readonly seconds: number;
  /**
   * Rows of columns to branch on first, a row for each thing and in it a column for each of several alike owners.
   * Exchanging two owners in all rows must give the same program.
   */
  readonly groups: readonly (readonly number[])[];
  /** Where the search starts: cases that together hold every point, up to exchanging owners. */
  readonly cases?: readonly (readonly Fix[])[];
  /** Told of relaxed points; may answer with the objective of a better whole one that it made of it. */
  readonly onPoint?: (values: Float64Array) => number | undefined;
  /** True stops the search. */
  readonly interrupt?: (seen: { readonly best: number; readonly bound: number; readonly nodes: number }) => boolean;
}

export interface BranchAnswer {
  /** `closed`: nothing beats the best by the margin. `stuck`: a relaxation could not be certified. */
  readonly kind: 'closed' | 'nodes used up' | 'time used up' | 'interrupted' | 'stuck';
  /** Certified; equal to the best when the search is closed, less the margin at most. */
  readonly bound: number;
  readonly best: number;
  /** The best point, if this search found it and the caller did not. */
  readonly values: Float64Array | undefined;
  readonly nodes: number;
  readonly iterations: number;
  readonly seconds: number;
}

export async function branchAndBound(request: BranchRequest): Promise<BranchAnswer> {
  const answer = await withSolver({
    model: request.model,
    relax: 'integers dropped',
    options: { presolve: 'off', time_limit: Math.max(0.05, request.seconds) },
    work: (solver) => search(request, solver),
  });
  const nothing: BranchAnswer = {
    kind: 'stuck',
    bound: Number.NEGATIVE_INFINITY,
    best: request.best,
    values: undefined,
    nodes: 0,
    iterations: 0,
    seconds: 0,
  };
  return answer.ok ? answer.value : nothing;
}

interface Node {
  readonly parent: Node | undefined;
  /** What was branched on. */
  readonly fixes: readonly Fix[];
  /** What reduced costs of the parent rule out for any better point; owners stay alike under these. */
  readonly tightened: readonly Fix[];
  readonly bound: number;
  /** Below a branching on single columns, owners are no longer alike. */
  readonly orbits: boolean;
  readonly depth: number;
}

interface Search {
  readonly request: BranchRequest;
  readonly solver: Model;
  readonly gains: ReturnType<typeof makeGains>;
  readonly open: Node[];
  best: number;
  values: Float64Array | undefined;
  /** The bounds that the solver holds now. */
  held: { readonly lower: Float64Array; readonly upper: Float64Array };
  nodes: number;
  iterations: number;
  /** Iterations from which the next point is offered. */
  offerAt: number;
  /** Least bound among the leaves that were closed by their bound. */
  closedBound: number;
  stuck: boolean;
}

/** A relaxed point is offered to the caller when so many simplex iterations were made since the last one. */
const OFFER_EVERY = 4000;

function search(request: BranchRequest, solver: Model): BranchAnswer {
  const open = (request.cases ?? [[]]).map(
    (fixes): Node => ({
      parent: undefined,
      fixes,
      tightened: [],
      bound: Number.NEGATIVE_INFINITY,
      orbits: true,
      depth: 0,
    }),
  );
  const state: Search = {
    request,
    solver,
    gains: makeGains(),
    open,
    best: request.best,
    values: undefined,
    held: { lower: request.model.columnLower, upper: request.model.columnUpper },
    nodes: 0,
    iterations: 0,
    offerAt: 0,
    closedBound: Number.POSITIVE_INFINITY,
    stuck: false,
  };
  let node = nextNode(state);
  while (node !== undefined) {
    const stop = stopReason(state, node);
    if (stop !== undefined) return ended(state, stop, node);
    node = visit(state, node) ?? nextNode(state);
  }
  return ended(state, state.stuck ? 'stuck' : 'closed', undefined);
}

function stopReason(state: Search, node: Node): BranchAnswer['kind'] | undefined {
  const { request, solver } = state;
  if (state.nodes >= request.nodes) return 'nodes used up';
  if (solver.getRunTime() >= request.seconds) return 'time used up';
  const seen = { best: state.best, bound: openBound(state, node), nodes: state.nodes };
  return request.interrupt?.(seen) === true ? 'interrupted' : undefined;
}

function openBound(state: Search, node: Node | undefined): number {
  const least = state.open.reduce((bound, one) => Math.min(bound, one.bound), node?.bound ?? Number.POSITIVE_INFINITY);
  return Math.min(least, state.closedBound, state.best);
}

function ended(state: Search, kind: BranchAnswer['kind'], node: Node | undefined): BranchAnswer {
  const { best, values, nodes, iterations, solver } = state;
  return { kind, bound: openBound(state, node), best, values, nodes, iterations, seconds: solver.getRunTime() };
}

function cutoffOf(state: Search): number {
  return state.best - state.request.margin;
}

/** The open node with the least bound; those that the best has overtaken are closed on the way. */
function nextNode(state: Search): Node | undefined {
  for (;;) {
    let index = -1;
    for (const [candidate, node] of state.open.entries()) {
      if (index < 0 || node.bound < (state.open[index]?.bound ?? 0)) index = candidate;
    }
    if (index < 0) return undefined;
    const [node] = state.open.splice(index, 1);
    if (node === undefined) return undefined;
    if (node.bound < cutoffOf(state)) return node;
    state.closedBound = Math.min(state.closedBound, node.bound);
  }
}

/** Solves a node; returns the child to go on with, if any. */
function visit(state: Search, node: Node): Node | undefined {
  const { request, solver } = state;
  state.nodes += 1;
  const bounds = applyFixes(state, node);
  const relaxed = runRelaxation({ solver, model: request.model, bounds });
  state.iterations += relaxed.iterations;
  if (relaxed.kind === 'empty') return undefined;
  if (relaxed.kind === 'unknown' || !relaxed.finished) return giveUp(state, node, relaxed);
  const bound = Math.max(node.bound, relaxed.bound);
  if (bound >= cutoffOf(state)) return close(state, bound);
  if (state.iterations >= state.offerAt) {
    state.offerAt = state.iterations + OFFER_EVERY;
    const offered = request.onPoint?.(relaxed.values);
    if (offered !== undefined && offered < state.best) {
      state.best = offered;
      state.values = undefined;
      if (bound >= cutoffOf(state)) return close(state, bound);
    }
  }
  const branching = chooseBranch({
    ...state,
    ...request,
    bounds,
    relaxed,
    bound,
    cutoff: cutoffOf(state),
    ownerMarks: node.orbits ? ownerMarks(request.groups, node) : undefined,
  });
  state.iterations += branching.iterations;
  return follow({ state, node, relaxed, bound, branching });
}

function close(state: Search, bound: number): undefined {
  state.closedBound = Math.min(state.closedBound, bound);
  return undefined;
}

function giveUp(state: Search, node: Node, relaxed: Relaxed): undefined {
  const bound = relaxed.kind === 'bounded' ? Math.max(node.bound, relaxed.bound) : node.bound;
  state.closedBound = Math.min(state.closedBound, bound);
  if (bound < cutoffOf(state)) state.stuck = true;
  return undefined;
}

function follow(request: {
  readonly state: Search;
  readonly node: Node;
  readonly relaxed: Extract<Relaxed, { kind: 'bounded' }>;
  readonly bound: number;
  readonly branching: Branching;
}): Node | undefined {
  const { state, node, relaxed, bound, branching } = request;
  if (branching.kind === 'whole') {
    const checked = checkValues(state.request.model, relaxed.values);
    if (checked.kind === 'unsound') return giveUp(state, node, relaxed);
    if (checked.objective < state.best) {
      state.best = checked.objective;
      state.values = checked.values;
    }
    // The leaf's own best point may lie a hair above its certified bound, by rounding only.
    if (checked.objective - bound > Math.max(state.request.margin, 1e-6 * Math.abs(checked.objective)))
      state.stuck = true;
    return close(state, bound);
  }
  const room = cutoffOf(state) - relaxed.bound;
  const tightened = ruledOut({ model: state.request.model, relaxed, bounds: state.held, room });
  const children = branching.children.map(
    (child): Node => ({
      parent: node,
      fixes: child.fixes,
      tightened,
      bound: Math.max(bound, child.bound),
      orbits: node.orbits && branching.kind === 'orbit',
      depth: node.depth + 1,
    }),
  );
  const alive: Node[] = [];
  for (const child of children) {
    if (child.bound < cutoffOf(state)) alive.push(child);
    else close(state, child.bound);
  }
  const [first, ...rest] = alive.sort((a, b) => a.bound - b.bound);
  state.open.push(...rest);
  return first;
}

function applyFixes(state: Search, node: Node): { readonly lower: Float64Array; readonly upper: Float64Array } {
  const { model } = state.request;
  const lower = Float64Array.from(model.columnLower);
  const upper = Float64Array.from(model.columnUpper);
  for (let one: Node | undefined = node; one !== undefined; one = one.parent) {
    for (const fix of [...one.fixes, ...one.tightened]) {
      lower[fix.column] = Math.max(at(lower, fix.column), fix.lower);
      upper[fix.column] = Math.min(at(upper, fix.column), fix.upper);
    }
  }
  for (let column = 0; column < model.columns; column += 1) {
    const isSet =
      at(lower, column) === at(state.held.lower, column) && at(upper, column) === at(state.held.upper, column);
    if (!isSet) state.solver.changeColBounds(column, at(lower, column), at(upper, column));
  }
  state.held = { lower, upper };
  return state.held;
}

/** What was branched on so far, by owner: owners with equal marks are still alike. */
function ownerMarks(groups: BranchRequest['groups'], node: Node): readonly string[] {
  const ownerOf = new Map(
    groups.flatMap((columns) => columns.map((column, owner): [number, number] => [column, owner])),
  );
  const groupOf = new Map(
    groups.flatMap((columns, group) => columns.map((column): [number, number] => [column, group])),
  );
  const marks = Array.from({ length: groups[0]?.length ?? 0 }, () => new Map<number, string>());
  for (let one: Node | undefined = node; one !== undefined; one = one.parent) {
    for (const fix of one.fixes) {
      marks[ownerOf.get(fix.column) ?? 0]?.set(groupOf.get(fix.column) ?? 0, fix.lower >= 1 ? 'has' : 'has not');
    }
  }
  return marks.map((mark) =>
    [...mark]
      .sort(([a], [b]) => a - b)
      .map((entry) => entry.join(' '))
      .join(';'),
  );
}

/** Bounds that any point below the cutoff keeps to: a unit of a column costs its reduced cost, and only so much is left to spend. */
function ruledOut(request: {
  readonly model: SparseModel;
  readonly relaxed: Extract<Relaxed, { kind: 'bounded' }>;
  readonly bounds: { readonly lower: Float64Array; readonly upper: Float64Array };
  readonly room: number;
}): readonly Fix[] {
  const { model, relaxed, bounds } = request;
  const room = request.room * (1 + 1e-9) + 1e-9;
  const fixes: Fix[] = [];
  for (let column = 0; column < model.columns; column += 1) {
    const reduced = at(relaxed.reducedCost, column);
    if (at(model.integer, column) === 0 || reduced === 0) continue;
    const lower = at(bounds.lower, column);
    const upper = at(bounds.upper, column);
    const most = Math.floor(room / Math.abs(reduced) + 1e-9);
    if (!(upper - lower > most)) continue;
    fixes.push(reduced > 0 ? { column, lower, upper: lower + most } : { column, lower: upper - most, upper });
  }
  return fixes;
}
