/*
 * The lines of a quote as a table for a spreadsheet: what each valve needs, what serves it, where to set it, and why not where nothing does.
 * Invariant: every valve of the schedule stands on exactly one row; a number stands alone in its cell, its unit in the heading.
 * Not here: writing CSV or a workbook (services).
 * Read next: ../papers/paper-inputs.ts.
 */

import { inWorkingOrder, nominalSize, partNumbersText } from '#lib/documents/papers/line-classes.ts';
import type { PaperLine, UnservedLine } from '#lib/documents/papers/paper-inputs.ts';
import type { LimiterSetting } from '#lib/equipment/assembly.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

export type TableCell = string | number | null;

export interface LinesTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly TableCell[])[];
}

interface Row {
  readonly part: PaperLine;
  readonly unserved: UnservedLine | undefined;
}

const COLUMNS: readonly (readonly [heading: string, cell: (row: Row) => TableCell])[] = [
  ['tag', ({ part }) => part.line.tag],
  ['location', ({ part }) => part.line.place.location ?? null],
  ['valves', ({ part }) => part.line.qty],
  ['valve type', ({ part }) => part.line.valveType?.value ?? 'unknown'],
  ['size', ({ part }) => (part.line.size === undefined ? null : nominalSize(part.line.size.nominal))],
  ['crew', ({ part }) => part.crew ?? null],
  ['equipment', ({ part }) => (part.assembly === null ? null : partNumbersText(part.assembly))],
  ['starting torque low, N·m', ({ part }) => rounded(worse(part).starting, 'low')],
  ['starting torque high, N·m', ({ part }) => rounded(worse(part).starting, 'high')],
  ['basis of the starting torque', ({ part }) => worse(part).starting.basis],
  ['never above, N·m', ({ part }) => neverAbove(part)],
  ['turns low', ({ part }) => rounded(part.duty.turns, 'low')],
  ['turns high', ({ part }) => rounded(part.duty.turns, 'high')],
  ['basis of the turns', ({ part }) => part.duty.turns.basis],
  ['limiter start opening, N·m at the valve', ({ part }) => start(part.assembly?.opening.unseat)],
  ['limiter ceiling opening, N·m at the valve', ({ part }) => ceiling(part.assembly?.opening.unseat)],
  ['limiter start closing, N·m at the valve', ({ part }) => start(part.assembly?.closing.unseat)],
  ['limiter ceiling closing, N·m at the valve', ({ part }) => ceiling(part.assembly?.closing.unseat)],
  ['measure first', ({ part }) => part.duty.measureFirst],
  ['not served because', ({ unserved }) => unserved?.because.map(({ sentence }) => sentence).join(' ') ?? null],
];

export function linesTable({
  lines,
  unserved,
}: {
  readonly lines: readonly PaperLine[];
  readonly unserved: readonly UnservedLine[];
}): LinesTable {
  const because = new Map(unserved.map((line) => [line.tag, line]));
  return {
    headings: COLUMNS.map(([heading]) => heading),
    rows: inWorkingOrder(lines).map((part) => {
      const row = { part, unserved: part.assembly === null ? because.get(part.line.tag) : undefined };
      return COLUMNS.map(([, cell]) => cell(row));
    }),
  };
}

function worse({ duty }: PaperLine) {
  return duty.opening.starting.high >= duty.closing.starting.high ? duty.opening : duty.closing;
}

/** The lowest that either direction may see, rounded down: a ceiling never grows by rounding. */
function neverAbove({ duty }: PaperLine): number {
  return down(Math.min(duty.opening.neverExceed.torque.low, duty.closing.neverExceed.torque.low));
}

function start(setting: LimiterSetting | null | undefined): number | null {
  return setting ? down(setting.atValve.start) : null;
}

function ceiling(setting: LimiterSetting | null | undefined): number | null {
  return setting ? down(setting.atValve.ceiling) : null;
}

function down(value: number): number {
  return Math.floor(value * 10) / 10;
}

/** A range is never narrowed by rounding. */
function rounded(value: Known<Unit>, end: 'low' | 'high'): number {
  return end === 'low' ? Math.floor(value.low * 10) / 10 : Math.ceil(value.high * 10) / 10;
}
