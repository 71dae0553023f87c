/*
 * One row of canonical cells → one line of the schedule, with all problems. Form, grid and file share it.
 * Invariant: every input gives a line; what cannot be read becomes a problem and the cell keeps its text.
 * Not here: which rows are lines at all, and tags that repeat (take-rows.ts).
 * Read next: take-rows.ts.
 */
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { type CellContext, cellText, report } from './cell-context.ts';
import { ACTION_WORDS } from './choice-words.ts';
import { chooseSize } from './choose-size.ts';
import { chooseType } from './choose-type.ts';
import type { Column } from './column-names.ts';
import type { Cells } from './columns.ts';
import type { IntakeProblem } from './intake-problem.ts';
import { given, readInterface, readPlace, readProcess, readState, readStem, readTorque } from './line-parts.ts';
import { quoted } from './plain-text.ts';
import { readChoice, readCount } from './read-cell.ts';
import { readRating } from './read-rating.ts';
import { type Remark, readRemark } from './read-remark.ts';

export interface ReadLine {
  readonly line: ScheduleLine;
  readonly problems: readonly IntakeProblem[];
}

/** Strokes per visit where the list does not say: out and back. */
const DEFAULT_STROKES = 2;

export function readLine(row: {
  readonly row: number;
  readonly cells: Cells;
  readonly measured?: readonly Column[];
}): ReadLine {
  const context: CellContext = { row: row.row, cells: row.cells, measured: new Set(row.measured ?? []), problems: [] };
  const notes = cellText(context, 'notes');
  const remark = readRemark(notes);
  const line: ScheduleLine = {
    tag: cellText(context, 'tag') ?? `row ${row.row}`,
    qty: readCount(context, 'qty')?.value ?? 1,
    strokes: readCount(context, 'strokes')?.value ?? DEFAULT_STROKES,
    ...given('valveType', chooseType(context, remark)),
    ...given('action', readChoice(context, 'action', ACTION_WORDS)),
    ...given('size', chooseSize(context, remark)),
    ...given('rating', readRating(context)),
    process: readProcess(context),
    state: readState(context, remark),
    stem: readStem(context),
    torque: readTorque(context),
    interface: readInterface(context, remark),
    place: readPlace(context, remark),
    ...given('notes', notes),
    ...given('photo', cellText(context, 'photo')),
  };
  if (remark !== null) reportRemark(context, remark);
  const leftOut = context.problems.filter(isNumberLeftOut).map(({ column, sentence, remedy }) => ({
    column,
    sentence: `${sentence} ${remedy}`,
  }));
  return { line: leftOut.length === 0 ? line : { ...line, leftOut }, problems: context.problems };
}

/** A number that was given and could not be taken goes on to the duty, which says so beside its figures. */
function isNumberLeftOut({ code }: IntakeProblem): boolean {
  return code === 'value-implausible' || code === 'value-unreadable' || code === 'thread-lead-odd';
}

function reportRemark(context: CellContext, remark: Remark): void {
  if (remark.outOfUse !== undefined) {
    report(context, {
      code: 'out-of-use',
      column: 'notes',
      sentence: `The remark says ${quoted(remark.outOfUse)}; the valve is kept as a line.`,
      remedy: 'Ask whether it is to be turned at all.',
    });
  }
  if (remark.severalValves !== undefined && cellText(context, 'qty') === undefined) {
    report(context, {
      code: 'several-valves',
      column: 'qty',
      sentence: `The remark says ${quoted(remark.severalValves)}, which may be several valves; one is taken.`,
      remedy: 'Write the number in the quantity column.',
    });
  }
}
