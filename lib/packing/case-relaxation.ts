/*
 * How many cases a load needs at least when cases may be used in parts: a linear program over all fillings, solved by column generation.
 * Invariant: `value` is never above the least number of cases; prices value each type, and no filling is worth more than `dearest`.
 * Not here: whole cases (fewest-cases.ts).
 * Read next: best-filling.ts, fewest-cases.ts.
 */
import { bestFilling } from './best-filling.ts';
import { takesMore } from './filling.ts';
import type { Load } from './load.ts';
import type { Meter } from './meter.ts';

export interface Relaxation {
  readonly value: number;
  /** By type; the value is their sum over the pieces. A filling worth w costs 1 − w cases when it is used. */
  readonly prices: readonly number[];
}

const ROUNDS = 400;

/**
 * Gilmore and Gomory's column generation with the inverse of the basis kept; halted early it still bounds by Farley's rule.
 * Source: Gilmore and Gomory, A linear programming approach to the cutting-stock problem, Operations Research 1961; Farley, 1990 (from memory).
 */
export function caseRelaxation(
  { load, counts }: { readonly load: Load; readonly counts: readonly number[] },
  meter: Meter,
): Relaxation {
  const rows = counts.flatMap((count, type) => (count > 0 ? [type] : []));
  if (rows.length === 0) return { value: 0, prices: counts.map(() => 0) };
  const basis = startBasis({ load, counts, rows });
  let best: Relaxation = { value: 0, prices: counts.map(() => 0) };
  for (let round = 0; round < ROUNDS; round += 1) {
    const prices = pricesOf({ basis, rows, types: counts.length });
    const filling = bestFilling({ load, counts, prices }, meter);
    // Halted early: what was known before stands.
    if (filling === null) break;
    const dearest = Math.max(1, filling.value);
    const value = rows.reduce((sum, type) => sum + (prices[type] ?? 0) * (counts[type] ?? 0), 0) / dearest;
    if (value > best.value) best = { value, prices: prices.map((price) => price / dearest) };
    if (filling.value <= 1 + 1e-7) break;
    enter({ basis, column: rows.map((type) => filling.counts[type] ?? 0) });
    // A pivot touches the whole inverse.
    meter.effort += Math.ceil(rows.length ** 2 / 8);
  }
  return best;
}

interface Basis {
  /** Inverse, row by row. */
  readonly inverse: number[][];
  /** Uses of each column of the basis. */
  readonly uses: number[];
}

/** Each type alone, as many as go into one case. */
function startBasis({
  load,
  counts,
  rows,
}: {
  readonly load: Load;
  readonly counts: readonly number[];
  readonly rows: readonly number[];
}): Basis {
  const alone = rows.map((type) =>
    Math.max(
      1,
      ...load.holders.map((_, holder) =>
        Math.min(counts[type] ?? 1, takesMore(load, { holder, type, grams: 0, volume: 0 })),
      ),
    ),
  );
  return {
    inverse: alone.map((many, row) => alone.map((_, column) => (row === column ? 1 / many : 0))),
    uses: rows.map((type, row) => (counts[type] ?? 0) / (alone[row] ?? 1)),
  };
}

function pricesOf({
  basis,
  rows,
  types,
}: {
  readonly basis: Basis;
  readonly rows: readonly number[];
  readonly types: number;
}): readonly number[] {
  const prices = Array.from({ length: types }, () => 0);
  for (const line of basis.inverse) {
    for (const [at, type] of rows.entries()) prices[type] = (prices[type] ?? 0) + (line[at] ?? 0);
  }
  return prices;
}

function enter({ basis, column }: { readonly basis: Basis; readonly column: readonly number[] }): void {
  const { inverse, uses } = basis;
  const change = inverse.map((line) => line.reduce((sum, value, at) => sum + value * (column[at] ?? 0), 0));
  let leaves = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const [row, by] of change.entries()) {
    if (by <= 1e-9) continue;
    const ratio = (uses[row] ?? 0) / by;
    if (ratio < least - 1e-12) {
      least = ratio;
      leaves = row;
    }
  }
  const pivotLine = inverse[leaves];
  if (pivotLine === undefined) return;
  const pivot = change[leaves] ?? 1;
  const scaled = pivotLine.map((value) => value / pivot);
  for (const [row, line] of inverse.entries()) {
    if (row === leaves) continue;
    const by = change[row] ?? 0;
    if (by !== 0) inverse[row] = line.map((value, at) => value - by * (scaled[at] ?? 0));
    uses[row] = (uses[row] ?? 0) - by * least;
  }
  inverse[leaves] = scaled;
  uses[leaves] = least;
}
