/*
 * A figure as the checker expects it on a calculation sheet, and a step made of such figures.
 * Invariant: what comes out is never better founded than what went in.
 * Not here: which steps there must be (expected-steps.ts).
 * Read next: expected-steps.ts.
 */
import { type Basis, worstBasis } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

export interface Figure {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly unit: Unit;
  readonly basis: Basis;
  /** Where a value of the duty comes from; of the house's own figures only the words may vary. */
  readonly source?: string;
}

export interface ExpectedStep {
  readonly id: string;
  readonly inputs: Readonly<Record<string, Figure>>;
  readonly result: Figure;
}

export const plate = (value: number, unit: Unit = '1'): Figure => just(value, { unit, basis: 'stated' });
export const practice = (value: number, unit: Unit = '1'): Figure => just(value, { unit, basis: 'rule of thumb' });
export const computed = (value: number, unit: Unit = '1'): Figure => just(value, { unit, basis: 'computed' });

export function just(value: number, kind: Pick<Figure, 'unit' | 'basis'>): Figure {
  return { low: value, nominal: value, high: value, ...kind };
}

export function ratioOf({ low, high }: { readonly low: number; readonly high: number }): Figure {
  return { low, nominal: (low + high) / 2, high, unit: '1', basis: 'stated' };
}

/** What comes out is computed, unless what went in was no better than practice or a guess. */
export function outOf(bases: readonly Basis[]): Basis {
  const worst = worstBasis(bases);
  return worst === 'rule of thumb' || worst === 'assumed' ? worst : 'computed';
}
