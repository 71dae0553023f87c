/*
 * What is known about a column: how it is shown, explained, recognised and read.
 * Invariant: every column says what it means, what not knowing it costs, and which values are plausible.
 * Not here: the columns themselves (columns.ts).
 * Read next: columns.ts.
 */
import type { Dimension } from '#lib/units/unit-table.ts';
import type { Column } from './column-names.ts';

export type ColumnGroup = 'identity' | 'valve' | 'process' | 'state' | 'stem' | 'torque' | 'drive' | 'place' | 'hazard';

export type Vocabulary =
  | 'valve type'
  | 'action'
  | 'flowing'
  | 'condition'
  | 'normal position'
  | 'stem'
  | 'thread hand'
  | 'collar bearing'
  | 'gearbox'
  | 'closes'
  | 'driven by'
  | 'measured at'
  | 'nut shape'
  | 'nut wear'
  | 'faces'
  | 'service';

export type Reading =
  | { readonly kind: 'text' }
  | { readonly kind: 'yes-no' }
  | { readonly kind: 'count'; readonly low: number; readonly high: number }
  | { readonly kind: 'years'; readonly low: number; readonly high: number }
  | { readonly kind: 'choice'; readonly words: Vocabulary }
  | {
      readonly kind: 'quantity';
      readonly dimension: Dimension;
      /** Units of a bare number, the likeliest first; a later one is tried where the first gives nonsense. */
      readonly bareUnits: readonly string[];
      /** Plausible range in SI; outside it the value is kept out of the duty and a problem says so. */
      readonly low: number;
      readonly high: number;
    }
  | { readonly kind: 'size' | 'rating' | 'thread' | 'nut' | 'ratio' };

export interface ColumnSpec {
  readonly name: Column;
  readonly label: string;
  readonly group: ColumnGroup;
  /** One sentence: what it is. */
  readonly help: string;
  readonly howToMeasure?: string;
  /** One sentence: what not knowing it costs. */
  readonly unknown: string;
  readonly example: string;
  /** Header names seen in lists, any spelling; matched without case, spaces and signs. */
  readonly aliases: readonly string[];
  readonly reading: Reading;
}

/** A quantity's reading with its plausible range given in a unit people think in. */
export function quantityReading(parts: {
  readonly dimension: Dimension;
  readonly bareUnits: readonly string[];
  readonly low: number;
  readonly high: number;
}): Reading {
  return { kind: 'quantity', ...parts };
}

/** Lengths that people write in millimetres, or in metres or inches where the number is small. */
export function lengthReading(range: { readonly low: number; readonly high: number }): Reading {
  return { kind: 'quantity', dimension: 'length', bareUnits: ['mm', 'm', 'in'], ...range };
}

export function choiceReading(words: Vocabulary): Reading {
  return { kind: 'choice', words };
}
