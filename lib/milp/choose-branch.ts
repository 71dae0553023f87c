/*
 * Chooses what to branch on: a fractional group column with its orbit of alike owners, tried out before it is trusted, else any fraction.
 * Invariant: the children of a branching together hold every whole point of the node, up to exchanging alike owners.
 * Not here: the search itself (branch-and-bound.ts).
 * Read next: branch-and-bound.ts.
 */
import type { Model } from 'highs';
import { type Relaxed, runRelaxation } from './relaxation.ts';
import { at, type SparseModel } from './sparse-model.ts';

export interface Fix {
  readonly column: number;
  readonly lower: number;
  readonly upper: number;
}

export interface Child {
  readonly fixes: readonly Fix[];
  /** Certified where it was tried out, else that of the parent. */
  readonly bound: number;
}

export type Branching =
  | { readonly kind: 'orbit' | 'column'; readonly children: readonly Child[]; readonly iterations: number }
  | { readonly kind: 'whole'; readonly iterations: number };

/** What fixing a group up or down has gained on average, per unit of fraction. */
export interface Gains {
  readonly up: Map<number, { sum: number; times: number }>;
  readonly down: Map<number, { sum: number; times: number }>;
}

export function makeGains(): Gains {
  return { up: new Map(), down: new Map() };
}

interface ChoiceRequest {
  readonly model: SparseModel;
  readonly solver: Model;
  readonly gains: Gains;
  readonly groups: readonly (readonly number[])[];
  readonly bounds: { readonly lower: Float64Array; readonly upper: Float64Array };
  readonly relaxed: Extract<Relaxed, { kind: 'bounded' }>;
  readonly bound: number;
  readonly cutoff: number;
  /** Owners with equal marks are alike; undefined when none are any more. */
  readonly ownerMarks: readonly string[] | undefined;
}

interface Candidate {
  readonly group: number;
  readonly fraction: number;
  readonly orbit: readonly number[];
  readonly score: number;
}

const FRACTION = 1e-6;
/**
 * Trials a node may make, simplex iterations of a trial, and trials after which a group's averages are trusted.
 * A trial goes on from where the one before ended: to set the solver back to the node cost as much as hundreds of iterations.
 */
const TRIALS = 5;
const TRIAL_ITERATIONS = 120;
const TRUSTED_AFTER = 2;

export function chooseBranch(request: ChoiceRequest): Branching {
  const candidates = groupCandidates(request);
  if (candidates.length === 0) return columnBranch(request);
  let best: { readonly children: readonly Child[]; readonly score: number } | undefined;
  let iterations = 0;
  let trials = 0;
  for (const candidate of candidates) {
    const isTrusted = timesTried(request.gains, candidate.group) >= TRUSTED_AFTER;
    if (!isTrusted && trials >= TRIALS) continue;
    const fixes = childFixes(candidate);
    if (isTrusted) {
      if (best === undefined || candidate.score > best.score) {
        best = { score: candidate.score, children: fixes.map((one) => ({ fixes: one, bound: request.bound })) };
      }
      continue;
    }
    trials += 1;
    const tried = fixes.map((one) => tryChild(request, one));
    iterations += tried.reduce((sum, one) => sum + one.iterations, 0);
    const children = tried.map(({ fixes: made, bound }) => ({ fixes: made, bound }));
    learn(request, candidate, children);
    const score = product(
      request,
      children.map((child) => child.bound - request.bound),
    );
    if (best === undefined || score > best.score) best = { score, children };
    if (children.some((child) => child.bound >= request.cutoff)) break;
  }
  return { kind: 'orbit', children: best?.children ?? [], iterations };
}

function product(request: ChoiceRequest, gains: readonly number[]): number {
  const least = 1e-6 * Math.max(1, Math.abs(request.bound));
  const most = Math.max(least, request.cutoff - request.bound);
  return gains.reduce((score, gain) => score * Math.max(least, Math.min(gain, most)), 1);
}

/** Groups with a fraction, the most promising first. */
function groupCandidates(request: ChoiceRequest): readonly Candidate[] {
  const signatures = request.ownerMarks;
  const candidates: Candidate[] = [];
  for (const [group, columns] of request.groups.entries()) {
    let chosen: number | undefined;
    let distance = FRACTION;
    for (const [owner, column] of columns.entries()) {
      const value = at(request.relaxed.values, column);
      const away = Math.abs(value - Math.round(value));
      if (away > distance + 1e-9) {
        distance = away;
        chosen = owner;
      }
    }
    if (chosen === undefined) continue;
    const own = chosen;
    const orbit = columns.filter((_, owner) =>
      signatures === undefined ? owner === own : signatures[owner] === signatures[own],
    );
    const column = columns[own];
    if (column === undefined) continue;
    const value = at(request.relaxed.values, column);
    candidates.push({
      group,
      fraction: value - Math.floor(value),
      orbit,
      score: scoreOf(request, { group, value, column }),
    });
  }
  const trusted = (one: Candidate) => (timesTried(request.gains, one.group) >= TRUSTED_AFTER ? 1 : 0);
  return candidates.sort((a, b) => trusted(b) - trusted(a) || b.score - a.score || a.group - b.group);
}

function scoreOf(
  request: ChoiceRequest,
  one: { readonly group: number; readonly value: number; readonly column: number },
): number {
  const fraction = one.value - Math.floor(one.value);
  const up = request.gains.up.get(one.group);
  const down = request.gains.down.get(one.group);
  if (up === undefined || down === undefined)
    return Math.abs(at(request.model.cost, one.column)) * fraction * (1 - fraction);
  return product(request, [(up.sum / up.times) * (1 - fraction), (down.sum / down.times) * fraction]);
}

function timesTried(gains: Gains, group: number): number {
  return Math.min(gains.up.get(group)?.times ?? 0, gains.down.get(group)?.times ?? 0);
}

/** Either the first of the alike owners has it, or none of them has. */
function childFixes(candidate: Candidate): readonly (readonly Fix[])[] {
  const [first] = candidate.orbit;
  if (first === undefined) return [];
  return [
    [{ column: first, lower: 1, upper: Number.POSITIVE_INFINITY }],
    candidate.orbit.map((column) => ({ column, lower: Number.NEGATIVE_INFINITY, upper: 0 })),
  ];
}

function tryChild(request: ChoiceRequest, fixes: readonly Fix[]): Child & { readonly iterations: number } {
  const { solver, model, bounds } = request;
  const lower = Float64Array.from(bounds.lower);
  const upper = Float64Array.from(bounds.upper);
  for (const fix of fixes) {
    lower[fix.column] = Math.max(at(lower, fix.column), fix.lower);
    upper[fix.column] = Math.min(at(upper, fix.column), fix.upper);
    solver.changeColBounds(fix.column, at(lower, fix.column), at(upper, fix.column));
  }
  solver.options.set('simplex_iteration_limit', TRIAL_ITERATIONS);
  const relaxed = runRelaxation({ solver, model, bounds: { lower, upper } });
  solver.options.set('simplex_iteration_limit', 2_147_483_647);
  for (const fix of fixes)
    solver.changeColBounds(fix.column, at(bounds.lower, fix.column), at(bounds.upper, fix.column));
  const bound =
    relaxed.kind === 'empty' ? Number.POSITIVE_INFINITY : relaxed.kind === 'bounded' ? relaxed.bound : request.bound;
  return { fixes, bound: Math.max(bound, request.bound), iterations: relaxed.iterations };
}

function learn(request: ChoiceRequest, candidate: Candidate, children: readonly Child[]): void {
  const most = Math.max(1, request.cutoff - request.bound);
  for (const [index, table] of [request.gains.up, request.gains.down].entries()) {
    const gain = Math.min(most, (children[index]?.bound ?? request.bound) - request.bound);
    const unit = gain / Math.max(0.05, index === 0 ? 1 - candidate.fraction : candidate.fraction);
    const known = table.get(candidate.group) ?? { sum: 0, times: 0 };
    known.sum += unit;
    known.times += 1;
    table.set(candidate.group, known);
  }
}

/** No group is fractional: branch on the whole-number column that is furthest from whole. */
function columnBranch(request: ChoiceRequest): Branching {
  const { model, relaxed, bound } = request;
  let chosen = -1;
  let distance = FRACTION;
  for (let column = 0; column < model.columns; column += 1) {
    if (at(model.integer, column) === 0) continue;
    const value = at(relaxed.values, column);
    const away = Math.abs(value - Math.round(value));
    if (away > distance) {
      distance = away;
      chosen = column;
    }
  }
  if (chosen < 0) return { kind: 'whole', iterations: 0 };
  const value = at(relaxed.values, chosen);
  const up: Child = { fixes: [{ column: chosen, lower: Math.ceil(value), upper: Number.POSITIVE_INFINITY }], bound };
  const down: Child = { fixes: [{ column: chosen, lower: Number.NEGATIVE_INFINITY, upper: Math.floor(value) }], bound };
  return { kind: 'column', children: value - Math.floor(value) > 0.5 ? [up, down] : [down, up], iterations: 0 };
}
