/*
 * The fewest cases for a load, proven by search: is there a packing with one case fewer?
 * Invariant: `bound` is never above the true least number; where the effort was enough the two are equal.
 * Not here: the order in which pieces lie in a case (pack-cases.ts).
 * Read next: case-bound.ts, filling.ts.
 */
import { type CaseBound, caseBound } from './case-bound.ts';
import { caseRelaxation } from './case-relaxation.ts';
import { type ClosedCase, closings } from './closings.ts';
import { type Filling, smallest } from './filling.ts';
import { firstFit } from './first-fit.ts';
import type { Load } from './load.ts';
import { isSpent, type Meter } from './meter.ts';

export interface FewestCases {
  readonly fillings: readonly Filling[];
  /** So many cases are needed whichever way. */
  readonly bound: number;
  /** Steps of the search; it is halted at the budget. */
  readonly effort: number;
}

/** Steps: some tenths of a second at most. Common practice, no source. */
const EFFORT = 100_000;

/**
 * Closes one case after the other: the first piece that is left opens a case, which is then filled so that nothing left would still go in.
 * The linear program over fillings bounds what is left, and its prices rule out fillings that waste too much. What was once found
 * impossible is remembered.
 * Source: Korf, A new algorithm for optimal bin packing, AAAI 2002, for closing case by case (from memory).
 */
export function fewestCases(load: Load, budget = EFFORT): FewestCases {
  const bound = caseBound(load);
  const counts = load.types.map(({ pieces }) => pieces.length);
  const search: Search = { load, bound, budget, effort: 0, impossible: new Set() };
  let best = firstFit(load);
  let least = bound.atLeast(counts);
  if (least < best.length) least = Math.max(least, wholeCases(caseRelaxation({ load, counts }, search).value));
  for (let cases = least; cases < best.length; cases += 1) {
    const found = complete(search, { counts, cases });
    // With the budget gone nothing more is known than the bound and the best so far.
    if (found === 'budget') break;
    if (found === 'impossible') least = cases + 1;
    else best = found;
  }
  return { fillings: best.map((filling) => smallest(load, filling)), bound: least, effort: search.effort };
}

interface Search extends Meter {
  readonly load: Load;
  readonly bound: CaseBound;
  readonly impossible: Set<string>;
}

interface Left {
  readonly counts: readonly number[];
  readonly cases: number;
}

type Found = readonly Filling[] | 'impossible' | 'budget';

function complete(search: Search, { counts, cases }: Left): Found {
  const { load } = search;
  if (counts.every((count) => count === 0)) return [];
  if (search.bound.atLeast(counts) > cases) return 'impossible';
  const key = `${cases} ${counts.join(' ')}`;
  if (search.impossible.has(key)) return 'impossible';
  const { value, prices } = caseRelaxation({ load, counts }, search);
  if (isSpent(search)) return 'budget';
  if (wholeCases(value) <= cases) {
    const spare = cases - value;
    for (const closed of closings({ load, counts, prices, least: 1 - spare - DUST }, search)) {
      const rest = complete(search, { counts: takeAway(counts, closed), cases: cases - 1 });
      if (rest === 'budget') return rest;
      if (rest !== 'impossible') return [closed, ...rest];
    }
    if (isSpent(search)) return 'budget';
  }
  search.impossible.add(key);
  return 'impossible';
}

function takeAway(counts: readonly number[], closed: ClosedCase): readonly number[] {
  return counts.map((count, at) => count - (closed.counts[at] ?? 0));
}

/** What a sum of the linear program may be off by. */
const DUST = 1e-6;

function wholeCases(value: number): number {
  return Math.ceil(value - DUST);
}
