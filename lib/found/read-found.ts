/*
 * Reads what was typed for one visit at one valve: numbers and units as the list's own reader does, dates, and what cannot be.
 * Invariant: a cell that cannot be read is a problem with row, column and remedy, and the visit is then not recorded.
 * Not here: which valve it is (the services find its line) and using it (known-valve.ts).
 * Read next: found.ts, known-valve.ts.
 */
import type { CellContext } from '#lib/intake/cell-context.ts';
import { CLOSES_WORDS, CONDITION_WORDS, YES_NO_WORDS } from '#lib/intake/choice-words.ts';
import type { Cells, Column } from '#lib/intake/columns.ts';
import type { IntakeProblem } from '#lib/intake/intake-problem.ts';
import { chooseWord, readChoice, readQuantity } from '#lib/intake/read-cell.ts';
import { readNut } from '#lib/intake/read-nut.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { type Fact, fact, type Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Found } from './found.ts';
import { type FoundCells, type FoundColumn, foundLabel } from './found-columns.ts';
import { dayText, readDate } from './read-date.ts';

export interface FoundProblem {
  readonly row: number;
  readonly column: FoundColumn;
  readonly severity: 'refused' | 'doubt';
  readonly sentence: string;
  readonly remedy: string;
}

export interface ReadFound {
  /** Null where something refuses it; the problems say what. */
  readonly found: Found | null;
  readonly problems: readonly FoundProblem[];
}

interface Visit {
  readonly row: number;
  readonly cells: FoundCells;
  /** `quote Q-00012` or `enquiry E-00003`, for the source sentence. */
  readonly under: string;
  readonly today: IsoDate;
}

/** No visit is remembered from before. */
const FIRST_DAY = '1950-01-01';
const MOST_NUMBER = 1000;

export function readFound(visit: Visit): ReadFound {
  const problems: FoundProblem[] = [];
  const refuse = (column: FoundColumn, sentence: string, remedy: string): void => {
    problems.push({ row: visit.row, column, severity: 'refused', sentence, remedy });
  };
  const { cells } = visit;
  const on = readDay(visit, refuse);
  const by = cells.by?.trim() ?? '';
  if (by === '') refuse('by', 'Nobody is named.', 'Write who counted and measured.');
  const read = readValues(visit, { on, by }, problems);
  if (!foundSomething(cells))
    refuse('turns', 'Nothing is written down for this valve.', 'Write what was found, or leave the valve out.');
  contradictions(read, refuse);
  const refused = problems.some(({ severity }) => severity === 'refused');
  return { found: refused || on === null ? null : { on, by, ...read }, problems };
}

type Refuse = (column: FoundColumn, sentence: string, remedy: string) => void;

function readDay({ cells, today }: Visit, refuse: Refuse): IsoDate | null {
  const text = cells.visited_on?.trim() ?? '';
  const on = readDate(text);
  if (on === null)
    refuse(
      'visited_on',
      text === '' ? 'No day is given.' : `“${text}” is no day that can be read in one way only.`,
      'Write it like 2026-03-12.',
    );
  else if (on > today) refuse('visited_on', `${dayText(on)} has not come yet.`, 'Check the day.');
  else if (on < FIRST_DAY) refuse('visited_on', `${dayText(on)} is too long ago.`, 'Check the year.');
  else return on;
  return null;
}

/** Everything but when, who and which valve. */
export function foundSomething(cells: FoundCells): boolean {
  const { tag: _tag, number: _number, visited_on: _on, by: _by, full_stroke: _full, ...found } = cells;
  return Object.values(found).some((text) => text !== undefined && text.trim() !== '');
}

type Values = Omit<Found, 'on' | 'by'>;

function readValues(
  { row, cells, under }: Visit,
  { on, by }: { readonly on: IsoDate | null; readonly by: string },
  problems: FoundProblem[],
): Values {
  const when = `on site on ${on === null ? '' : dayText(on)} by ${by}, ${under}`;
  const reader: Reader = { row, cells, problems, when };
  const number = readNumber(reader);
  const turns = quantityOf(reader, { from: 'turns', as: 'turns', unit: 'turn', verb: 'Counted' });
  const starting = quantityOf(reader, {
    from: 'starting_torque',
    as: 'starting_torque',
    unit: 'N·m',
    verb: 'Measured',
  });
  const running = quantityOf(reader, { from: 'running_torque', as: 'running_torque', unit: 'N·m', verb: 'Measured' });
  const highest = quantityOf(reader, { from: 'highest_torque', as: 'starting_torque', unit: 'N·m', verb: 'Measured' });
  const wheelDiameter = quantityOf(reader, {
    from: 'wheel_diameter',
    as: 'wheel_diameter',
    unit: 'm',
    verb: 'Measured',
  });
  const nutSize = nutOf(reader);
  const condition = choiceOf(reader, 'condition', (context) => readChoice(context, 'condition', CONDITION_WORDS));
  const closes = choiceOf(reader, 'closes', (context) => readChoice(context, 'closes', CLOSES_WORDS));
  const positionFound = textOf(reader, 'position_found', 'Found');
  const positionLeft = textOf(reader, 'position_left', 'Left');
  const defects = cells.defects?.trim();
  return {
    number,
    fullStroke: strokeOf(reader),
    ...(turns && { turns }),
    ...(starting && { starting }),
    ...(running && { running }),
    ...(highest && { highest }),
    ...(wheelDiameter && { wheelDiameter }),
    ...(nutSize && { nutSize }),
    ...(condition && { condition }),
    ...(closes && { closes }),
    ...(positionFound && { positionFound }),
    ...(positionLeft && { positionLeft }),
    ...(defects ? { defects } : {}),
  };
}

interface Reader {
  readonly row: number;
  readonly cells: FoundCells;
  readonly problems: FoundProblem[];
  readonly when: string;
}

function readNumber({ row, cells, problems }: Reader): number {
  const text = cells.number?.trim() ?? '';
  if (text === '') return 1;
  const number = /^\d{1,4}$/.test(text) ? Number(text) : 0;
  if (number >= 1 && number <= MOST_NUMBER) return number;
  const sentence = `“${text}” is no number of a valve.`;
  problems.push({
    row,
    column: 'number',
    severity: 'refused',
    sentence,
    remedy: 'Write 1, 2, 3 …, or leave it empty.',
  });
  return 1;
}

function strokeOf({ row, cells, problems }: Reader): Found['fullStroke'] {
  const text = cells.full_stroke?.trim() ?? '';
  if (text === '') return 'yes';
  const answer = chooseWord(text, YES_NO_WORDS);
  if (answer !== undefined) return answer;
  const sentence = `“${text}” is neither yes nor no.`;
  problems.push({ row, column: 'full_stroke', severity: 'refused', sentence, remedy: 'Write yes or no.' });
  return 'no';
}

/** Reads a cell as the list's own reader would, under the name that the record gives it. */
function asListCell<Value>(
  { row, cells, problems }: Reader,
  place: { readonly from: FoundColumn; readonly as: Column },
  read: (context: CellContext) => Value | undefined,
): Value | undefined {
  const text = cells[place.from]?.trim() ?? '';
  if (text === '') return undefined;
  const own: IntakeProblem[] = [];
  const listCells: Cells = { [place.as]: text };
  const value = read({ row, cells: listCells, measured: new Set([place.as]), problems: own });
  for (const { sentence, remedy } of own) {
    const told = place.from === place.as ? sentence : sentence.replace(/^Starting torque/, foundLabel(place.from));
    const severity = value === undefined ? 'refused' : 'doubt';
    problems.push({ row, column: place.from, severity, sentence: told, remedy });
  }
  if (value === undefined && own.length === 0)
    problems.push({
      row,
      column: place.from,
      severity: 'refused',
      sentence: `“${text}” says that it is not known.`,
      remedy: 'Leave the cell empty.',
    });
  return value;
}

function quantityOf<U extends Unit>(
  reader: Reader,
  place: { readonly from: FoundColumn; readonly as: Column; readonly unit: U; readonly verb: string },
): Known<U> | undefined {
  const value = asListCell(reader, place, (context) => readQuantity(context, place.as, place.unit));
  return value && { ...value, basis: 'measured', source: told(reader, place.from, place.verb) };
}

function nutOf(reader: Reader): Known<'m'> | undefined {
  const value = asListCell(reader, { from: 'nut_size', as: 'nut_size' }, readNut)?.acrossFlats;
  return value && { ...value, basis: 'measured', source: told(reader, 'nut_size', 'Measured') };
}

function choiceOf<Value extends string>(
  reader: Reader,
  column: 'condition' | 'closes',
  read: (context: CellContext) => Fact<Value> | undefined,
): Fact<Value> | undefined {
  const value = asListCell(reader, { from: column, as: column }, read);
  return value && fact(value.value, { basis: 'measured', source: told(reader, column, 'Found') });
}

function textOf(reader: Reader, column: FoundColumn, verb: string): Fact<string> | undefined {
  const text = reader.cells[column]?.trim() ?? '';
  return text === '' ? undefined : fact(text, { basis: 'measured', source: told(reader, column, verb) });
}

/** `Counted on site on 12 March 2026 by T. Marl, quote Q-00012: Turns “62”.` */
function told({ cells, when }: Reader, column: FoundColumn, verb: string): string {
  return `${verb} ${when}: ${foundLabel(column)} “${cells[column]?.trim() ?? ''}”.`;
}

/** What cannot both be true of one stroke. */
function contradictions({ starting, running, highest, condition, turns }: Values, refuse: Refuse): void {
  const above = starting !== undefined && highest !== undefined && starting.low > highest.high;
  if (above)
    refuse(
      'highest_torque',
      'The highest torque of a stroke cannot lie below the torque that started it.',
      'Check both readings.',
    );
  if (running !== undefined && highest !== undefined && running.low > highest.high)
    refuse(
      'highest_torque',
      'The highest torque of a stroke cannot lie below the torque that ran it.',
      'Check both readings.',
    );
  if (condition?.value === 'seized' && (turns !== undefined || running !== undefined))
    refuse(
      'condition',
      'A valve that was turned is not seized.',
      'Write stiff, or leave turns and running torque empty.',
    );
}
