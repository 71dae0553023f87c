/*
 * What a sheet remembers so that its values can be worked out again at other points of their ranges.
 * Invariant: the order of the tape is the order of the work; which formulas it holds hangs on ranges alone, never on a drawn value.
 * Not here: drawing the points (sample-duty.ts).
 * Read next: sheet.ts, sample-duty.ts.
 */
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

export interface TapeInput {
  readonly key: string;
  /** In words, as the calculation sheet names it. */
  readonly name: string;
  readonly value: Known<Unit>;
  /** It has no size of its own but says which of several cases holds. */
  readonly picks: boolean;
}

export interface TapeEntry {
  readonly result: Known<Unit>;
  readonly inputs: readonly TapeInput[];
  readonly evaluate: (at: (key: string) => number) => number;
}

export type Tape = TapeEntry[];
