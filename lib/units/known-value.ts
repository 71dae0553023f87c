/*
 * A value is never bare: its range, unit, basis and the sentence that says where it comes from.
 * Invariant: low ≤ nominal ≤ high; the source sentence is never empty.
 * Not here: how values are combined (engineering) or which basis wins for a field (duty).
 * Read next: calculation-step.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import type { Quantity, Unit } from './quantity.ts';

/** From the best basis to the worst. */
export const BASES = ['measured', 'stated', 'standard', 'computed', 'rule of thumb', 'assumed'] as const;
export type Basis = (typeof BASES)[number];

export interface Range<U extends Unit> {
  readonly low: Quantity<U>;
  readonly high: Quantity<U>;
}

export interface Known<U extends Unit> {
  readonly low: Quantity<U>;
  readonly nominal: Quantity<U>;
  readonly high: Quantity<U>;
  readonly unit: U;
  readonly basis: Basis;
  /** A sentence: where the value comes from. */
  readonly source: string;
}

/** A fact that is not a number (a type, a shape, a yes or no), with the same honesty. */
export interface Fact<Value> {
  readonly value: Value;
  readonly basis: Basis;
  readonly source: string;
}

export interface Origin {
  readonly basis: Basis;
  readonly source: string;
}

export function known<U extends Unit>(
  unit: U,
  range: { readonly low: number; readonly nominal: number; readonly high: number },
  origin: Origin,
): Known<U> {
  const { low, nominal, high } = range;
  invariant(
    low <= nominal && nominal <= high,
    `A known value needs low ≤ nominal ≤ high, not ${low}, ${nominal}, ${high}.`,
  );
  invariant(origin.source.length > 0, 'A known value needs a source sentence.');
  const { basis, source } = origin;
  return { low: low as Quantity<U>, nominal: nominal as Quantity<U>, high: high as Quantity<U>, unit, basis, source };
}

export function exactly<U extends Unit>(unit: U, value: number, origin: Origin): Known<U> {
  return known(unit, { low: value, nominal: value, high: value }, origin);
}

export function fact<Value>(value: Value, origin: Origin): Fact<Value> {
  return { value, ...origin };
}

export function basisRank(basis: Basis): number {
  return BASES.indexOf(basis);
}

/** The worse of several bases: a computed value is no better than what went into it. */
export function worstBasis(bases: readonly Basis[]): Basis {
  return bases.reduce<Basis>((worst, basis) => (basisRank(basis) > basisRank(worst) ? basis : worst), 'measured');
}
