/*
 * Lower bounds that hold whatever the solver did: weak duality worked out here from any row multipliers.
 * Invariant: a certified bound never exceeds the true optimum by more than rounding, which is taken off; bad multipliers only weaken it.
 * Not here: finding the multipliers (relaxation.ts).
 * Read next: relaxation.ts.
 */
import { at, type SparseModel } from './sparse-model.ts';

export interface Certificate {
  /** No solution within the bounds costs less. */
  readonly bound: number;
  /** What one unit more of each column costs against that bound. */
  readonly reducedCost: Float64Array;
}

export interface Bounds {
  readonly lower: ArrayLike<number>;
  readonly upper: ArrayLike<number>;
}

/** Taken off for rounding in sums of double-precision terms: some ten million times the unit roundoff would be 2e-9. */
const ROUNDING = 1e-11;

/**
 * For minimise c·x, rows l ≤ A·x ≤ u: any multipliers y give
 * c·x ≥ Σ yᵢ·(lᵢ or uᵢ by the sign of yᵢ) + Σ min over the column's bounds of (c − Aᵀy)ⱼ·xⱼ.
 */
export function certify(request: {
  readonly model: SparseModel;
  readonly multipliers: ArrayLike<number>;
  readonly bounds: Bounds;
  /** 1 for an ordinary bound; 0 leaves the costs out, which turns a dual ray into a proof that nothing fits. */
  readonly costFactor: 0 | 1;
}): Certificate {
  const { model, multipliers, bounds, costFactor } = request;
  const reducedCost = Float64Array.from(model.cost, (cost) => cost * costFactor);
  let bound = 0;
  let size = 0;
  for (let row = 0; row < model.rows; row += 1) {
    const given = at(multipliers, row);
    if (given === 0 || !Number.isFinite(given)) continue;
    const side = given > 0 ? at(model.rowLower, row) : at(model.rowUpper, row);
    if (!Number.isFinite(side)) continue;
    bound += given * side;
    size += Math.abs(given * side);
    for (let entry = at(model.rowStart, row); entry < at(model.rowStart, row + 1); entry += 1) {
      const column = at(model.entryColumn, entry);
      reducedCost[column] = at(reducedCost, column) - given * at(model.entryValue, entry);
    }
  }
  for (let column = 0; column < model.columns; column += 1) {
    const reduced = at(reducedCost, column);
    if (reduced === 0) continue;
    const side = reduced > 0 ? at(bounds.lower, column) : at(bounds.upper, column);
    if (!Number.isFinite(side)) return { bound: Number.NEGATIVE_INFINITY, reducedCost };
    bound += reduced * side;
    size += Math.abs(reduced * side);
  }
  return { bound: bound - ROUNDING * size, reducedCost };
}

/** Whether the multipliers prove that no point within the bounds meets all rows (Farkas). */
export function provesEmpty(request: {
  readonly model: SparseModel;
  readonly multipliers: ArrayLike<number>;
  readonly bounds: Bounds;
}): boolean {
  let scale = 0;
  for (let row = 0; row < request.model.rows; row += 1) scale = Math.max(scale, Math.abs(at(request.multipliers, row)));
  if (!(scale > 0)) return false;
  const multipliers = Float64Array.from(request.multipliers, (value) =>
    Math.abs(value) < 1e-12 * scale ? 0 : value / scale,
  );
  const flipped = multipliers.map((value) => -value);
  // HiGHS does not say which sign its rays have; either sign is a proof when it holds.
  return [multipliers, flipped].some(
    (candidate) => certify({ ...request, multipliers: candidate, costFactor: 0 }).bound > 1e-7,
  );
}
