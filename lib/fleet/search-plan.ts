/*
 * Finds a good plan quickly: start with everything, drop what is not worth its cost, swap, add what one option needs, shake, repeat.
 * Invariant: same program, same plan (fixed order, seeded shakes, effort counted in job visits); what it returns is within all limits.
 * Not here: what kits come to (search-state.ts), any claim that the plan is best (solve-stage.ts).
 * Read next: search-state.ts.
 */
import { seededRandom } from '#lib/kernel/random.ts';
import { neededCounts } from './build-model.ts';
import { makeSolution } from './measure.ts';
import { type Aim, type Program, pick, type Solution, type Use } from './program.ts';
import { jobOrder, needsOfOptions, neighbourItems } from './search-lists.ts';
import { apply, type Change, isLower, restore, type State, scoreOf, snapshot, tryChanges } from './search-state.ts';
import { makeServices } from './services.ts';
import { type Sharing, shareOut } from './share-out.ts';
import { type Blend, blended, itemWeight } from './weights.ts';

/** Job visits of a long search: up to some seconds where classes have thousands of ways. */
export const SEARCH_VISITS = 3_000_000;

export interface SearchRequest {
  readonly program: Program;
  readonly aim: Aim;
  /** An aim already settled: it weighs more than anything that could be gained by the other. */
  readonly before?: Aim | undefined;
  /** Effort: how many times a job may be looked at. */
  readonly visits: number;
}

export interface Found {
  readonly solution: Solution;
  readonly visits: number;
}

export function searchPlan(request: SearchRequest): Found {
  const { program, aim } = request;
  let best: Solution | undefined;
  let visits = 0;
  for (const timeWeight of timeWeights(program)) {
    for (const sharing of sharings(program)) {
      const state = startState({ ...request, timeWeight, sharing });
      improve(state, request.visits / 2);
      const found = readState(state);
      visits += state.visits;
      if (best === undefined || isBetter(found, best, aim)) best = found;
    }
    if (best?.measures.unserved === 0) break;
  }
  return { solution: best ?? makeSolution(program, []), visits };
}

function sharings(program: Program): readonly Sharing[] {
  return program.crews === 1 ? ['longest first'] : ['longest first', 'jobs of one crew first'];
}

export function isBetter(a: Solution, b: Solution, aim: Aim): boolean {
  if (a.measures.unserved !== b.measures.unserved) return a.measures.unserved < b.measures.unserved;
  if (a.measures[aim] !== b.measures[aim]) return a.measures[aim] < b.measures[aim];
  return a.measures.cost < b.measures.cost;
}

/** From "hours do not matter" to "only hours matter", in the currency of an average item per crew's window. */
function timeWeights(program: Program): readonly number[] {
  const total = program.items.reduce((sum, item) => sum + item.cost_minor, 0);
  const perSecond = total / Math.max(1, program.items.length) / Math.max(1, program.secondsPerCrew);
  return [0, perSecond, 16 * perSecond, 1e9 * (perSecond + 1)];
}

/** Drops and swaps down from kits that a relaxation suggests. */
export function searchFrom(request: SearchRequest & { readonly kits: readonly (readonly number[])[] }): Found {
  let best: Solution | undefined;
  let visits = 0;
  for (const sharing of sharings(request.program)) {
    const state = startState({ ...request, timeWeight: 0, sharing }, request.kits);
    dropAndSwap(state, request.visits);
    const found = readState(state);
    visits += state.visits;
    if (best === undefined || isBetter(found, best, request.aim)) best = found;
  }
  return { solution: best ?? makeSolution(request.program, []), visits };
}

function startState(
  request: SearchRequest & { readonly timeWeight: number; readonly sharing: Sharing },
  wanted?: readonly (readonly number[])[],
): State {
  const { program, timeWeight, sharing } = request;
  const blend = blendOf(request);
  const table = makeServices({ program, blend, timeWeight });
  const counts = neededCounts(program);
  const stock = program.items.map((item) => item.free);
  const kits = Array.from({ length: program.crews }, () => program.items.map(() => 0));
  for (const [item, levels] of counts.entries()) {
    for (const [crew, kit] of kits.entries()) {
      const most = Math.min(
        pick(stock, item),
        wanted === undefined ? Number.POSITIVE_INFINITY : pick(pick(wanted, crew), item),
      );
      const count = levels.findLast((level) => level <= most) ?? 0;
      kit[item] = count;
      stock[item] = pick(stock, item) - count;
    }
  }
  const state: State = {
    program,
    table,
    counts,
    kits,
    stock,
    order: jobOrder(program),
    weights: program.items.map((item) => blended(blend, (aim) => itemWeight(aim, item))),
    neighbours: neighbourItems(program),
    needs: needsOfOptions(program),
    sharing,
    services: kits.map((kit) => program.jobs.map((_, job) => table.best(job, kit))),
    score: { unserved: Number.POSITIVE_INFINITY, weight: 0, carried: 0 },
    visits: 0,
    random: seededRandom(20_177),
  };
  state.score = scoreOf(state);
  return state;
}

/** The least differences that count: a piece, a second, a thousandth of a second visit. */
const LEAST: Readonly<Record<Aim, number>> = { unserved: 1, cost: 1, pieces: 1, time: 1, 'second visits': 1e-3 };

function blendOf({ program, aim, before }: SearchRequest): Blend {
  if (before === undefined) return [{ aim, factor: 1 }];
  const all = program.items.reduce((sum, item) => sum + item.cost_minor, 0);
  return [
    { aim, factor: 1 },
    { aim: before, factor: (all + 1) / LEAST[before] },
  ];
}

function improve(state: State, visitLimit: number): void {
  dropAndSwap(state, visitLimit);
  while (state.visits < visitLimit && addPass(state, visitLimit)) dropAndSwap(state, visitLimit);
  let kept = snapshot(state);
  for (let shake = 0; shake < 12 && state.visits < visitLimit; shake += 1) {
    shakeUp(state);
    dropAndSwap(state, visitLimit);
    if (isLower(state.score, kept.score)) kept = snapshot(state);
    else restore(state, kept);
  }
  restore(state, kept);
}

function dropAndSwap(state: State, visitLimit: number): void {
  for (let round = 0; round < 20 && state.visits < visitLimit; round += 1) {
    const dropped = dropPass(state);
    const swapped = swapPass(state, visitLimit);
    if (!dropped && !swapped) return;
  }
}

/** Carried items, the dearest first. */
function carriedItems(state: State): readonly Change[] {
  const carried = state.kits.flatMap((kit, crew) =>
    kit.map((count, item) => ({ crew, item, count })).filter(({ count }) => count > 0),
  );
  const worth = (one: Change) => one.count * pick(state.weights, one.item);
  return carried.sort((a, b) => worth(b) - worth(a) || a.item - b.item || b.crew - a.crew);
}

function dropPass(state: State): boolean {
  let changed = false;
  for (const { crew, item, count } of carriedItems(state)) {
    const lower = pick(state.counts, item).findLast((level) => level < count) ?? 0;
    if (tryChanges(state, [{ crew, item, count: 0 }])) changed = true;
    else if (lower > 0 && tryChanges(state, [{ crew, item, count: lower }])) changed = true;
  }
  return changed;
}

function swapPass(state: State, visitLimit: number): boolean {
  let changed = false;
  for (const { crew, item } of carriedItems(state)) {
    if (pick(state.weights, item) === 0) continue;
    for (const other of pick(state.neighbours, item)) {
      if (state.visits >= visitLimit) return changed;
      if (pick(pick(state.kits, crew), other) > 0) continue;
      const count = pick(state.counts, other)[0] ?? 1;
      if (
        tryChanges(state, [
          { crew, item, count: 0 },
          { crew, item: other, count },
        ])
      ) {
        changed = true;
        break;
      }
    }
    if (pick(pick(state.kits, crew), item) > 0 && tryMoveToOtherCrew(state, { crew, item })) changed = true;
  }
  return changed;
}

function tryMoveToOtherCrew(state: State, from: { readonly crew: number; readonly item: number }): boolean {
  const count = pick(pick(state.kits, from.crew), from.item);
  return state.kits.some(
    (kit, crew) =>
      crew !== from.crew &&
      pick(kit, from.item) < count &&
      tryChanges(state, [
        { ...from, count: 0 },
        { crew, item: from.item, count },
      ]),
  );
}

/** Gives a crew all that one option needs and drops what that makes needless: what pays only together is no swap of single items. */
function addPass(state: State, visitLimit: number): boolean {
  let changed = false;
  for (const needs of state.needs) {
    for (let crew = state.kits.length - 1; crew >= 0; crew -= 1) {
      if (state.visits >= visitLimit) return changed;
      const kit = pick(state.kits, crew);
      const missing = needs.filter(({ item, count }) => pick(kit, item) < count).map((need) => ({ crew, ...need }));
      if (missing.length === 0) continue;
      const kept = snapshot(state);
      if (apply(state, missing) === undefined) continue;
      state.score = scoreOf(state);
      for (const carried of carriedItems(state)) {
        const isNew = missing.some((one) => one.item === carried.item && one.crew === carried.crew);
        if (!isNew) tryChanges(state, [{ ...carried, count: 0 }]);
      }
      if (isLower(state.score, kept.score)) changed = true;
      else restore(state, kept);
    }
  }
  return changed;
}

/** Adds a few items back at random; dropping and swapping then finds its way down again. */
function shakeUp(state: State): void {
  const wanted = Math.max(3, Math.round(state.program.items.length / 12));
  const changes: Change[] = [];
  for (let added = 0; added < wanted; added += 1) {
    const item = Math.floor(state.random() * state.program.items.length);
    const crew = Math.floor(state.random() * state.program.crews);
    const count = pick(state.counts, item).at(-1);
    if (count === undefined || pick(pick(state.kits, crew), item) >= count) continue;
    if (!changes.some((one) => one.item === item)) changes.push({ crew, item, count });
  }
  const possible = changes.filter(
    ({ crew, item, count }) => pick(state.stock, item) + pick(pick(state.kits, crew), item) >= count,
  );
  apply(state, possible);
  state.score = scoreOf(state);
}

function readState(state: State): Solution {
  const uses: Use[] = [];
  shareOut({ ...state, record: (use) => uses.push(use) });
  return makeSolution(state.program, uses);
}
