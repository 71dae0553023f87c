/*
 * What one visit found at one valve, and what becomes of it when the valve is met again.
 * Invariant: every value carries the sentence of who measured it and when.
 * Not here: reading cells (read-found.ts) and using the values (known-valve.ts).
 * Read next: known-valve.ts.
 */
import type { ValveCondition } from '#lib/duty/schedule-line.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import type { Fact, Known } from '#lib/units/known-value.ts';

export interface Found {
  readonly on: IsoDate;
  readonly by: string;
  /** Which of several identical valves of one line, from 1. */
  readonly number: number;
  readonly positionFound?: Fact<string>;
  readonly positionLeft?: Fact<string>;
  readonly turns?: Known<'turn'>;
  readonly fullStroke: 'yes' | 'no';
  readonly starting?: Known<'N·m'>;
  readonly running?: Known<'N·m'>;
  readonly highest?: Known<'N·m'>;
  readonly condition?: Fact<ValveCondition>;
  readonly closes?: Fact<'clockwise' | 'anticlockwise'>;
  readonly wheelDiameter?: Known<'m'>;
  readonly nutSize?: Known<'m'>;
  readonly defects?: string;
}

/** A value that visits know, and what became of it. */
export interface KnownFromVisits {
  /** A column of the list, or of what a visit found. */
  readonly column: string;
  readonly text: string;
  readonly source: string;
  readonly use:
    | 'used'
    | 'covered beside the list'
    | 'the list has it measured'
    | 'kept, not used'
    | 'weighed in the calculation';
}

/** What is told while a line is put together. */
export interface Notes {
  readonly known: KnownFromVisits[];
  readonly findings: Finding[];
}
