/*
 * The linear relaxation of a program, its bound certified by weak duality worked out here.
 * Invariant: the bound holds whatever the solver did; "empty" is said only with a verified proof.
 * Not here: the branching that uses many relaxations (branch-and-bound.ts).
 * Read next: certificate.ts.
 */
import type { Model } from 'highs';
import { type Bounds, certify, provesEmpty } from './certificate.ts';
import { holdsModel, infoNumber } from './highs-runtime.ts';
import type { SparseModel } from './sparse-model.ts';

export type Relaxed =
  | {
      readonly kind: 'bounded';
      /** Certified. */
      readonly bound: number;
      readonly reducedCost: Float64Array;
      readonly values: Float64Array;
      readonly iterations: number;
      /** Whether the linear program was solved to its end; otherwise the values mean nothing but the bound still holds. */
      readonly finished: boolean;
    }
  /** Nothing meets the rows within the bounds; verified by a dual ray. */
  | { readonly kind: 'empty'; readonly iterations: number }
  | { readonly kind: 'unknown'; readonly iterations: number };

/** Runs the linear program that the solver holds and certifies what comes out. */
export function runRelaxation(request: {
  readonly solver: Model;
  readonly model: SparseModel;
  readonly bounds: Bounds;
}): Relaxed {
  const { solver, model, bounds } = request;
  if (!holdsModel(solver, model)) return { kind: 'unknown', iterations: 0 };
  const { modelStatus } = solver.run();
  const iterations = Math.max(0, infoNumber(solver, 'simplex_iteration_count'));
  if (modelStatus === 8 || modelStatus === 9) {
    const ray = solver.getDualRay();
    const proven = ray !== undefined && provesEmpty({ model, multipliers: ray.values, bounds });
    return { kind: proven ? 'empty' : 'unknown', iterations };
  }
  const solution = solver.getSolution();
  if (solution.rowDual.length !== model.rows) return { kind: 'unknown', iterations };
  const { bound, reducedCost } = certify({ model, multipliers: solution.rowDual, bounds, costFactor: 1 });
  return { kind: 'bounded', bound, reducedCost, values: solution.colValue, iterations, finished: modelStatus === 7 };
}
