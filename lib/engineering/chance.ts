/*
 * Chance that a line is done at the first visit, from the ranges of what is not known.
 * Invariant: between 0 and 1, the same for the same numbers, and never smaller for a wider cover.
 * Not here: which ranges count for a line (kits).
 * Read next: ../kits/.
 */
import { type Ratio, ratio } from '#lib/units/quantity.ts';

/** A value between low and high that is likeliest at nominal. */
export interface Spread {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

/**
 * Chance that a value is no more than a limit.
 *
 * Formula: triangle: (x − a)²/((b − a)(c − a)) up to c, 1 − (b − x)²/((b − a)(b − c)) beyond
 *
 * @param value - Lowest, likeliest and highest value. [–] range low ≤ nominal ≤ high
 * @param limit - What it must not pass. [–] range any
 * @returns Chance. [1]
 * @source Distribution function of the triangular distribution.
 * @assumes The ends of the range are really its ends.
 * @example chanceAtMost({ value: { low: 0, nominal: 5, high: 10 }, limit: 5 }) // => 0.5
 */
export function chanceAtMost({ value, limit }: { readonly value: Spread; readonly limit: number }): Ratio {
  const { low, nominal, high } = value;
  if (limit >= high) return ratio(1);
  if (limit < low) return ratio(0);
  if (limit < nominal) return ratio(((limit - low) / (high - low)) * ((limit - low) / (nominal - low)));
  return ratio(1 - ((high - limit) / (high - low)) * ((high - limit) / (high - nominal)));
}

/**
 * Value that is not passed with a given chance: the other way about from `chanceAtMost`.
 *
 * Formula: a + √(p(b − a)(c − a)) up to c, b − √((1 − p)(b − a)(b − c)) beyond
 *
 * @param value - Lowest, likeliest and highest value. [–] range low ≤ nominal ≤ high
 * @param chance - Chance that the value is no more. [1] range 0…1
 * @returns Value. [–]
 * @source Distribution function of the triangular distribution, inverted.
 * @assumes The ends of the range are really its ends.
 * @example valueAtChance({ value: { low: 0, nominal: 5, high: 10 }, chance: ratio(0.5) }) // => 5
 */
export function valueAtChance({ value, chance }: { readonly value: Spread; readonly chance: Ratio }): number {
  const { low, nominal, high } = value;
  const width = high - low;
  if (width <= 0) return nominal;
  if (chance * width <= nominal - low) return Math.min(nominal, low + Math.sqrt(chance * width * (nominal - low)));
  return Math.max(nominal, high - Math.sqrt((1 - chance) * width * (high - nominal)));
}

/**
 * Chance that a value lies in at least one of several ranges.
 *
 * Formula: Σ (P(high) − P(low)) over the ranges joined where they overlap
 *
 * @param value - Lowest, likeliest and highest value. [–] range low ≤ nominal ≤ high
 * @param cover - Ranges that the parts of a covering set take. [–] range low ≤ high
 * @returns Chance. [1]
 * @source Distribution function of the triangular distribution.
 * @assumes Ends of a range belong to it.
 * @example chanceCovered({ value: { low: 0, nominal: 5, high: 10 }, cover: [{ low: 0, high: 5 }] }) // => 0.5
 */
export function chanceCovered({
  value,
  cover,
}: {
  readonly value: Spread;
  readonly cover: readonly { readonly low: number; readonly high: number }[];
}): Ratio {
  const joined = joinRanges(cover);
  if (value.low === value.high)
    return ratio(joined.some(({ low, high }) => low <= value.low && value.low <= high) ? 1 : 0);
  const chances = joined.map(
    ({ low, high }) => chanceAtMost({ value, limit: high }) - chanceAtMost({ value, limit: low }),
  );
  return ratio(
    Math.min(
      1,
      chances.reduce((sum, chance) => sum + chance, 0),
    ),
  );
}

/**
 * Chance that one of several equally likely values is among those that are covered.
 *
 * Formula: covered/all
 *
 * @param all - How many values it may be. [1] range 1…100
 * @param covered - How many of them the parts take. [1] range 0…all
 * @returns Chance. [1]
 * @source Counting.
 * @assumes Nothing is known of which is likelier.
 * @example chanceAmong({ all: 3, covered: 2 }) // => 0.667
 */
export function chanceAmong({ all, covered }: { readonly all: number; readonly covered: number }): Ratio {
  return ratio(all <= 0 ? 1 : Math.min(1, covered / all));
}

/**
 * Chance that everything comes right together.
 *
 * Formula: p = Π p_k
 *
 * @param chances - Chance of each thing that must come right. [1] range 0…1
 * @returns Chance of all. [1]
 * @source Product of independent chances.
 * @assumes The things do not hang together.
 * @example chanceOfAll([ratio(0.5), ratio(0.8)]) // => 0.4
 */
export function chanceOfAll(chances: readonly Ratio[]): Ratio {
  return ratio(chances.reduce((product, chance) => product * chance, 1));
}

function joinRanges(cover: readonly { readonly low: number; readonly high: number }[]) {
  const joined: { low: number; high: number }[] = [];
  for (const range of cover.toSorted((a, b) => a.low - b.low)) {
    const last = joined.at(-1);
    if (last !== undefined && range.low <= last.high) last.high = Math.max(last.high, range.high);
    else joined.push({ low: range.low, high: range.high });
  }
  return joined;
}
