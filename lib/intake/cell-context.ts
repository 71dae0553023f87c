/*
 * The row that is being read, with the problems found so far.
 * Invariant: readers only add problems; they never throw and never change a cell.
 * Not here: the readers (read-cell.ts, read-size.ts …).
 * Read next: read-line.ts.
 */
import type { Origin } from '#lib/units/known-value.ts';
import type { Column } from './column-names.ts';
import { type Cells, columnSpec } from './columns.ts';
import type { IntakeCode, IntakeProblem } from './intake-problem.ts';
import { isMissing, quoted } from './plain-text.ts';
import { remember } from './remember.ts';

export interface CellContext {
  readonly row: number;
  readonly cells: Cells;
  readonly measured: ReadonlySet<Column>;
  readonly problems: IntakeProblem[];
}

/** The text of a cell, or undefined where it is empty or says that it is not known. */
export function cellText(context: CellContext, column: Column): string | undefined {
  const text = context.cells[column];
  return text === undefined || isMissing(text) ? undefined : text.trim();
}

/** Where the value of a column comes from, as a sentence. */
export function originOf(context: CellContext, column: Column): Origin {
  const text = context.cells[column]?.trim() ?? '';
  const memory = context.measured.has(column) ? MEASURED : STATED;
  const answer =
    memory.get(column) ??
    remember((said) => origin({ said, column, basis: memory === MEASURED ? 'measured' : 'stated' }));
  memory.set(column, answer);
  return answer(text);
}

const MEASURED = new Map<Column, (text: string) => Origin>();
const STATED = new Map<Column, (text: string) => Origin>();

function origin(parts: {
  readonly said: string;
  readonly column: Column;
  readonly basis: 'measured' | 'stated';
}): Origin {
  const value = `${columnSpec(parts.column).label} ${quoted(parts.said)}`;
  return parts.basis === 'measured'
    ? { basis: 'measured', source: `Measured on this valve: ${value}.` }
    : { basis: 'stated', source: `Stated in the list: ${value}.` };
}

export function report(
  context: CellContext,
  problem: {
    readonly code: IntakeCode;
    readonly column: Column;
    readonly sentence: string;
    readonly remedy: string;
    readonly severity?: IntakeProblem['severity'];
  },
): void {
  context.problems.push({ severity: 'doubt', ...problem, row: context.row });
}
