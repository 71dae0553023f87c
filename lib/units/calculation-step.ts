/*
 * One step of a calculation sheet: what was worked out, from what, by which formula, on whose authority.
 * Invariant: an engineer can redo a step by hand from what it holds.
 * Not here: layout and unit systems of the sheet (documents).
 * Read next: ../engineering/.
 */
import type { Basis, Known } from './known-value.ts';
import type { Unit } from './quantity.ts';

export interface StepInput {
  /** Symbol as in the formula, e.g. `dm`. */
  readonly symbol: string;
  readonly name: string;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly unit: Unit;
  readonly basis: Basis;
  readonly source: string;
}

export interface Step {
  /** Stable kebab-case id, e.g. `stem-torque-opening`. */
  readonly id: string;
  readonly name: string;
  /** The formula in symbols, e.g. `T = F·dm/2 · …`. Empty for a looked-up value. */
  readonly formula: string;
  readonly inputs: readonly StepInput[];
  readonly result: Known<Unit>;
  readonly source: string;
}

/** What every assess… function answers. */
export interface Assessed<Value> {
  readonly value: Value;
  readonly steps: readonly Step[];
}
