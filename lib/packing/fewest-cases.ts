/*
 * The fewest cases for a load, proven by search: is there a packing with one case fewer?
 * Invariant: `bound` is never above the true least number; where the effort was enough the two are equal.
 * Not here: the order in which pieces lie in a case (pack-cases.ts).
 * Read next: case-bound.ts, filling.ts.
 */
import { type CaseBound, caseBound } from './case-bound.ts';
import { type Filling, smallest, takesMore } from './filling.ts';
import { firstFit } from './first-fit.ts';
import type { Load } from './load.ts';

export interface FewestCases {
  readonly fillings: readonly Filling[];
  /** So many cases are needed whichever way. */
  readonly bound: number;
  /** Places looked at while filling cases; the search is halted at the budget. */
  readonly effort: number;
}

/** Places looked at while filling cases: some hundredths of a second. Common practice, no source. */
const EFFORT = 60_000;

/**
 * Completes one case after the other, as in bin completion: the heaviest piece that is left opens a case, which is then filled so that
 * nothing left would still go in. What was once found not to fit is remembered.
 * Source: Korf, A new algorithm for optimal bin packing, AAAI 2002 (from memory).
 */
export function fewestCases(load: Load, budget = EFFORT): FewestCases {
  const bound = caseBound(load);
  const counts = load.types.map(({ pieces }) => pieces.length);
  let best = firstFit(load);
  let least = bound.atLeast(counts);
  const search: Search = { load, bound, holders: tried(load), budget, effort: 0, impossible: new Set() };
  while (least < best.length) {
    const found = complete(search, { counts, cases: best.length - 1 });
    // With the budget gone nothing more is known than the bound and the best so far.
    if (found === 'budget') break;
    if (found === 'impossible') least = best.length;
    else best = found;
  }
  return { fillings: best.map((filling) => smallest(load, filling)), bound: least, effort: search.effort };
}

interface Search {
  readonly load: Load;
  readonly bound: CaseBound;
  /** Holders worth opening: one that takes less of everything than another is left out. */
  readonly holders: readonly number[];
  readonly budget: number;
  effort: number;
  readonly impossible: Set<string>;
}

interface Left {
  readonly counts: readonly number[];
  readonly cases: number;
}

type Found = readonly Filling[] | 'impossible' | 'budget';

function complete(search: Search, left: Left): Found {
  const anchor = left.counts.findIndex((count) => count > 0);
  if (anchor < 0) return [];
  if (search.bound.atLeast(left.counts) > left.cases) return 'impossible';
  const key = `${left.cases} ${left.counts.join(' ')}`;
  if (search.impossible.has(key)) return 'impossible';
  for (const filling of closings(search, { counts: left.counts, anchor })) {
    const counts = left.counts.map((count, at) => count - (filling.counts[at] ?? 0));
    const rest = complete(search, { counts, cases: left.cases - 1 });
    if (rest === 'budget') return rest;
    if (rest !== 'impossible') return [filling, ...rest];
  }
  if (search.effort > search.budget) return 'budget';
  search.impossible.add(key);
  return 'impossible';
}

interface Closing {
  readonly counts: readonly number[];
  readonly anchor: number;
}

/** Every way to close a case around the anchor so that nothing that is left would still go in; the fullest of heavy pieces first. */
function* closings(search: Search, { counts, anchor }: Closing): Generator<Filling> {
  const { load } = search;
  const type = load.types[anchor];
  if (type === undefined) return;
  const rest = counts.map((count, at) => (at === anchor ? count - 1 : count));
  for (const holder of search.holders) {
    const isForTwo = load.holders[holder]?.persons === 2;
    if (type.goesInto[holder] !== true || isForTwo !== type.needsTwo) continue;
    const chosen = counts.map((_, at) => (at === anchor ? 1 : 0));
    const after = load.types.map((_, at) => sumFrom(load, { rest, from: at }));
    yield* fill({ search, holder, rest, after, anchor, chosen }, { type: anchor, grams: type.grams, volume: type.volume });
  }
}

interface Weight {
  readonly grams: number;
  readonly volume: number;
}

/** All that is left of a type and of those after it. */
function sumFrom({ types }: Load, { rest, from }: { readonly rest: readonly number[]; readonly from: number }): Weight {
  const sum = (of: (type: Load['types'][number]) => number): number =>
    types.reduce((all, type, at) => (at < from ? all : all + (rest[at] ?? 0) * of(type)), 0);
  return { grams: sum(({ grams }) => grams), volume: sum(({ volume }) => volume) };
}

interface Filled {
  readonly search: Search;
  readonly holder: number;
  /** Left beside the anchor. */
  readonly rest: readonly number[];
  readonly after: readonly Weight[];
  readonly anchor: number;
  /** With the anchor; changed on the way down, and back on the way up. */
  readonly chosen: number[];
}

interface At extends Weight {
  readonly type: number;
}

function* fill(filled: Filled, { type, grams, volume }: At): Generator<Filling> {
  const { search, holder, rest, after, anchor, chosen } = filled;
  if (search.effort > search.budget) return;
  const still = after[type] ?? { grams: 0, volume: 0 };
  // What was left out before would go in even with all that may still come: such a case is not closed.
  if (!isClosed(filled, { type, grams: grams + still.grams, volume: volume + still.volume })) return;
  const piece = search.load.types[type];
  if (piece === undefined) {
    yield { holder, counts: [...chosen] };
    return;
  }
  search.effort += 1;
  const own = type === anchor ? 1 : 0;
  const most = Math.min(rest[type] ?? 0, takesMore(search.load, { holder, type, grams, volume }));
  for (let more = most; more >= 0; more -= 1) {
    chosen[type] = own + more;
    yield* fill(filled, { type: type + 1, grams: grams + more * piece.grams, volume: volume + more * piece.volume });
  }
  chosen[type] = own;
}

/** Of the types before this one nothing that is left goes in any more. A case that could take more is never better. */
function isClosed({ search, holder, rest, anchor, chosen }: Filled, { type, grams, volume }: At): boolean {
  for (let before = anchor; before < type; before += 1) {
    const left = (rest[before] ?? 0) - (chosen[before] ?? 0) + (before === anchor ? 1 : 0);
    if (left > 0 && takesMore(search.load, { holder, type: before, grams, volume }) > 0) return false;
  }
  return true;
}

function tried({ types, holders }: Load): readonly number[] {
  const covers = (one: number, other: number): boolean => {
    const [a, b] = [holders[one], holders[other]];
    return (
      a !== undefined &&
      b !== undefined &&
      a.persons === b.persons &&
      a.grams >= b.grams &&
      a.volume >= b.volume &&
      types.every(({ goesInto }) => goesInto[other] !== true || goesInto[one] === true)
    );
  };
  const all = holders.map((_, at) => at);
  return all.filter((one) => !all.some((other) => other !== one && covers(other, one) && (!covers(one, other) || other < one)));
}
