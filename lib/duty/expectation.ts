/*
 * What is expected of one value of a line by its other values.
 * Invariant: it names its column, what it is held against and its basis.
 * Not here: the expectations themselves (size-expectations.ts, thread-expectations.ts).
 * Read next: unlikely-values.ts.
 */
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Limits, NumberColumn } from './plausible-values.ts';

export interface Expectation {
  readonly column: NumberColumn;
  readonly value: Known<Unit>;
  readonly usual: Limits;
  /** What the value is held against, e.g. `for a DN 50 valve`. */
  readonly against: string;
  readonly about: readonly string[];
  readonly basis: string;
  /** True where too large a value would make the valve look stronger than it is. */
  readonly widens: boolean;
}

export function expect(
  column: NumberColumn,
  value: Known<Unit> | undefined,
  rest: Omit<Expectation, 'column' | 'value'>,
): readonly Expectation[] {
  return value === undefined ? [] : [{ column, value, ...rest }];
}
