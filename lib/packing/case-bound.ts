/*
 * How many cases pieces need at least, whichever way they are put together.
 * Invariant: no packing has fewer cases than the bound says.
 * Not here: finding a packing (fewest-cases.ts).
 * Read next: fewest-cases.ts.
 */
import type { Holder, Load } from './load.ts';

/** A price on mass and room at which no case holds more than 1. */
interface Weights {
  readonly perGram: number;
  readonly perVolume: number;
}

export interface CaseBound {
  /** Cases that so many of each type need at least. */
  readonly atLeast: (counts: readonly number[]) => number;
}

/**
 * Each weighing is a lower bound of the linear relaxation (weak duality). It is raised by the dual feasible function that
 * counts a piece above 1 − ε as a whole case and one below ε as nothing.
 * Source: Fekete and Schepers, New classes of fast lower bounds for bin packing problems, 2001 (from memory).
 */
export function caseBound({ types, holders }: Pick<Load, 'types' | 'holders'>): CaseBound {
  const forOne = weighings(holders.filter(({ persons }) => persons === 1));
  const forTwo = weighings(holders);
  const prepare = (weights: readonly Weights[]) =>
    weights.map(({ perGram, perVolume }) => types.map(({ grams, volume }) => grams * perGram + volume * perVolume));
  const [sizesForOne, sizesForTwo] = [prepare(forOne), prepare(forTwo)];
  return {
    atLeast: (counts) => {
      const two = types.some(({ needsTwo }, at) => needsTwo && (counts[at] ?? 0) > 0);
      const bounds = (two ? sizesForTwo : sizesForOne).map((sizes) => strongest({ sizes, counts }));
      return Math.max(0, ...bounds);
    },
  };
}

/** Corners of λM + μV ≤ 1 over all holders: where two limits meet, and where each axis is met first. */
function weighings(holders: readonly Holder[]): readonly Weights[] {
  const real = holders.filter(({ grams, volume }) => grams > 0 && volume > 0);
  if (real.length === 0) return [];
  const mass = { perGram: 1 / Math.max(...real.map(({ grams }) => grams)), perVolume: 0 };
  const room = { perGram: 0, perVolume: 1 / Math.max(...real.map(({ volume }) => volume)) };
  const meeting = real.flatMap((one, at) => real.slice(at + 1).flatMap((other) => corner({ one, other })));
  const single = real.length === 1 ? [] : meeting;
  return [mass, room, ...single].filter(({ perGram, perVolume }) =>
    real.every(({ grams, volume }) => perGram * grams + perVolume * volume <= 1 + 1e-9),
  );
}

function corner({ one, other }: { readonly one: Holder; readonly other: Holder }): readonly Weights[] {
  const determinant = one.grams * other.volume - other.grams * one.volume;
  if (Math.abs(determinant) < 1e-6) return [];
  const perGram = (other.volume - one.volume) / determinant;
  const perVolume = (one.grams - other.grams) / determinant;
  return perGram > 0 && perVolume > 0 ? [{ perGram, perVolume }] : [];
}

function strongest({
  sizes,
  counts,
}: {
  readonly sizes: readonly number[];
  readonly counts: readonly number[];
}): number {
  const here = sizes.flatMap((size, at) => ((counts[at] ?? 0) > 0 ? [{ size, count: counts[at] ?? 0 }] : []));
  const cuts = [0, ...new Set(here.map(({ size }) => Math.min(size, 1 - size)).filter((cut) => cut > 0 && cut <= 0.5))];
  const sums = cuts.map((cut) => here.reduce((sum, { size, count }) => sum + count * raised({ size, cut }), 0));
  return Math.max(0, ...sums.map((sum) => Math.ceil(sum - 1e-6)));
}

function raised({ size, cut }: { readonly size: number; readonly cut: number }): number {
  if (size > 1 - cut + 1e-9) return 1;
  return size < cut - 1e-9 ? 0 : size;
}
