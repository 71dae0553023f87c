/*
 * Reads one plain cell: a quantity, a choice, yes or no, a count, years, a ratio.
 * Invariant: a value that cannot be is left out, one that is unusual is kept; a problem names field and range; nothing throws.
 * Not here: sizes, ratings, threads and nuts (read-size.ts, read-rating.ts, read-thread.ts, read-nut.ts).
 * Read next: read-line.ts.
 */
import { isNumberColumn, PLAUSIBLE } from '#lib/duty/plausible-values.ts';
import { unreachable } from '#lib/kernel/invariant.ts';
import { formatQuantity } from '#lib/units/format-quantity.ts';
import { type Fact, fact, type Known, known } from '#lib/units/known-value.ts';
import { parseNumber } from '#lib/units/parse-number.ts';
import { parseQuantityRange, type ReadQuantity } from '#lib/units/parse-quantity.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { DIMENSIONS } from '#lib/units/unit-table.ts';
import { type CellContext, cellText, originOf, report } from './cell-context.ts';
import { type Choice, YES_NO_WORDS } from './choice-words.ts';
import type { Column } from './column-names.ts';
import type { Reading } from './column-spec.ts';
import { columnSpec } from './columns.ts';
import { plainText, quoted } from './plain-text.ts';
import { remember } from './remember.ts';

export function readText(context: CellContext, column: Column): Fact<string> | undefined {
  const text = cellText(context, column);
  return text === undefined ? undefined : fact(text, originOf(context, column));
}

export function readChoice<Value extends string>(
  context: CellContext,
  column: Column,
  choice: Choice<Value>,
): Fact<Value> | undefined {
  const text = cellText(context, column);
  if (text === undefined) return undefined;
  const value = chooseWord(text, choice);
  if (value !== undefined) return fact(value, originOf(context, column));
  report(context, {
    code: 'choice-unknown',
    column,
    sentence: `${columnSpec(column).label} ${quoted(text)} is none of: ${choice.values.join(', ')}. It is taken as not known.`,
    remedy: `Write one of: ${choice.values.join(', ')}; or leave it empty.`,
  });
  return undefined;
}

/** The value that a text means, or undefined. */
export function chooseWord<Value extends string>(text: string, choice: Choice<Value>): Value | undefined {
  const plain = plainText(text);
  const exact = choice.values.find((value) => value === plain);
  return exact ?? choice.words.find(([pattern]) => pattern.test(plain))?.[1];
}

export function readYesNo(context: CellContext, column: Column): Fact<boolean> | undefined {
  const answer = readChoice(context, column, YES_NO_WORDS);
  return answer && fact(answer.value === 'yes', { basis: answer.basis, source: answer.source });
}

/** A quantity in the SI unit that the column's dimension has. */
export function readQuantity<U extends Unit>(context: CellContext, column: Column, unit: U): Known<U> | undefined {
  const text = cellText(context, column);
  const { reading } = columnSpec(column);
  if (text === undefined || reading.kind !== 'quantity' || DIMENSIONS[reading.dimension] !== unit) return undefined;
  const attempts = attemptsOf(text, reading);
  const first = attempts[0];
  if (first === undefined) {
    reportUnreadable(context, column, text);
    return undefined;
  }
  const fitting = attempts.find(isWithin(reading)) ?? attempts.find(isWithin(possibleRange(column, reading)));
  if (fitting === undefined) {
    reportImplausible(context, column, rangeText(reading));
    return undefined;
  }
  if (!isWithin(reading)(fitting)) reportUnlikely(context, column, rangeText(reading));
  if (fitting !== first) reportGuessedUnit(context, column, fitting.bareUnit);
  if (fitting.read.ambiguousNumber)
    reportAmbiguous(context, column, formatQuantity({ value: fitting.read.nominal, unit, system: 'si' }));
  const origin = originOf(context, column);
  const bare = fitting.read.unitText === '' && !['1', 'turn'].includes(fitting.bareUnit);
  const source = bare ? `${origin.source.slice(0, -1)}, no unit given, read as ${fitting.bareUnit}.` : origin.source;
  return known(unit, fitting.read, { ...origin, source: source + hedgeText(fitting.read) });
}

/** What a value of the column can be at all; the duty asks about what is possible but unusual. */
function possibleRange(column: Column, usual: Ends): Ends {
  if (!isNumberColumn(column)) return usual;
  const [low, high] = PLAUSIBLE[column].possible;
  return { low, high };
}

function isWithin({ low, high }: Ends): (attempt: Attempt) => boolean {
  return ({ read }) => read.low >= low && read.high <= high;
}

interface Ends {
  readonly low: number;
  readonly high: number;
}

interface Attempt {
  readonly bareUnit: string;
  readonly read: ReadQuantity;
}

type QuantityReading = Extract<Reading, { kind: 'quantity' }>;

/** One memory for each column's way of reading. */
const MEMORIES = new WeakMap<QuantityReading, (text: string) => readonly Attempt[]>();

function attemptsOf(text: string, reading: QuantityReading): readonly Attempt[] {
  const memory = MEMORIES.get(reading) ?? remember((cell: string) => attempt(cell, reading));
  MEMORIES.set(reading, memory);
  return memory(text);
}

function attempt(text: string, reading: QuantityReading): readonly Attempt[] {
  const attempts: Attempt[] = [];
  for (const bareUnit of reading.bareUnits) {
    const read = parseQuantityRange({ text, dimension: reading.dimension, bareUnit });
    if (!read.ok) return [];
    attempts.push({ bareUnit, read: read.value });
    if (read.value.unitText !== '') break;
  }
  return attempts;
}

function hedgeText(read: ReadQuantity): string {
  switch (read.hedge) {
    case 'exact':
    case 'range':
      return '';
    case 'about':
      return ' “About” is taken as give or take a tenth.';
    case 'at most':
      return ' Only an upper end is given; the upper end is taken as the likely value.';
    case 'at least':
      return ' Only a lower end is given; up to twice as much is allowed for.';
    default:
      return unreachable(read.hedge);
  }
}

function rangeText(reading: QuantityReading): string {
  const unit = DIMENSIONS[reading.dimension];
  const low = formatQuantity({ value: reading.low, unit, system: 'si' });
  return `${low} to ${formatQuantity({ value: reading.high, unit, system: 'si' })}`;
}

/** A whole number, `4` or `4.0` or `4 spokes`. */
export function readCount(context: CellContext, column: Column): Fact<number> | undefined {
  const text = cellText(context, column);
  const { reading } = columnSpec(column);
  if (text === undefined || reading.kind !== 'count') return undefined;
  const number = parseNumber(text.replace(/\s*\p{L}+\.?$/u, ''));
  if (number === null) {
    reportUnreadable(context, column, text);
    return undefined;
  }
  if (!Number.isInteger(number.value) || number.value < reading.low || number.value > reading.high) {
    reportImplausible(context, column, `a whole number from ${reading.low} to ${reading.high}`);
    return undefined;
  }
  return fact(number.value, originOf(context, column));
}

/** Years, or a calendar year (a number from 1850 up); `6 months`, `2019-05-03`, `never`. */
export function readYears(context: CellContext, column: Column): Fact<number> | undefined {
  const text = cellText(context, column);
  const { reading } = columnSpec(column);
  if (text === undefined || reading.kind !== 'years') return undefined;
  const origin = originOf(context, column);
  const plain = plainText(text);
  if (/^(never|nie|jamais|nunca|mai)$/.test(plain)) {
    return fact(100, { ...origin, source: `${origin.source} “Never” is taken as a hundred years.` });
  }
  const calendar = /(?:^|\D)(1[89]\d\d|20\d\d)(?:\.0+)?(?=\D|$)/.exec(plain)?.[1];
  const spoken =
    /^(.+?)\s*(years?|yrs?|y|a|months?|mths?|mo|weeks?|days?|jahren?|ans?|anos?|anni)?(?:\s*(?:ago|old))?$/.exec(plain);
  const number =
    spoken?.[1] === undefined ? null : parseNumber(spoken[1].replace(/^(about|ca\.?|approx\.?|~|>|over)\s*/, ''));
  if (number === null || calendar !== undefined) {
    if (calendar !== undefined) return fact(Number(calendar), origin);
    reportUnreadable(context, column, text);
    return undefined;
  }
  const years = number.value * yearsPer(spoken?.[2] ?? 'y');
  if (years < reading.low || years > reading.high) {
    reportImplausible(context, column, `${reading.low} to ${reading.high} years, or a year from 1850 on`);
    return undefined;
  }
  return fact(Number(years.toPrecision(4)), origin);
}

function yearsPer(unit: string): number {
  if (unit.startsWith('mo') || unit.startsWith('mth')) return 1 / 12;
  if (unit.startsWith('w')) return 7 / 365.25;
  return unit.startsWith('d') ? 1 / 365.25 : 1;
}

/** `40:1`, `1:40`, `i = 40`, `40`. */
export function readRatio(context: CellContext, column: Column): Known<'1'> | undefined {
  const text = cellText(context, column);
  if (text === undefined) return undefined;
  const plain = plainText(text).replace(/^i\s*=\s*/, '');
  const pair = /^([\d.,]+)\s*(?::|to|\/)\s*([\d.,]+)$/.exec(plain);
  const numbers = (pair ? [pair[1], pair[2]] : [plain, '1']).map(
    (part) => parseNumber(part ?? '')?.value ?? Number.NaN,
  );
  const [a = Number.NaN, b = Number.NaN] = numbers;
  if (!Number.isFinite(a) || !Number.isFinite(b)) {
    reportUnreadable(context, column, text);
    return undefined;
  }
  const value = Math.max(a, b) / Math.min(a, b);
  if (!Number.isFinite(value) || value < 1 || value > 100_000 || Math.min(a, b) <= 0) {
    reportImplausible(context, column, '1:1 to 100 000:1');
    return undefined;
  }
  return known('1', { low: value, nominal: value, high: value }, originOf(context, column));
}

export function reportUnreadable(context: CellContext, column: Column, text: string): void {
  const spec = columnSpec(column);
  report(context, {
    code: 'value-unreadable',
    column,
    sentence: `${spec.label} ${quoted(text)} cannot be read; it is taken as not known.`,
    remedy: `Write it like ${quoted(spec.example)}${spec.reading.kind === 'quantity' ? ` (usual: ${rangeText(spec.reading)})` : ''}, or leave it empty.`,
  });
}

export function reportImplausible(context: CellContext, column: Column, range: string): void {
  const { label } = columnSpec(column);
  report(context, {
    code: 'value-implausible',
    column,
    sentence: `${label} ${quoted(context.cells[column] ?? '')} is outside what is plausible (${range}); it is taken as not known.`,
    remedy: 'Check the number and its unit.',
  });
}

function reportUnlikely(context: CellContext, column: Column, range: string): void {
  const { label } = columnSpec(column);
  report(context, {
    code: 'value-unlikely',
    column,
    sentence: `${label} ${quoted(context.cells[column] ?? '')} is outside what is usual (${range}); it is kept as it stands.`,
    remedy: 'Check the number and its unit.',
  });
}

function reportGuessedUnit(context: CellContext, column: Column, unit: string): void {
  report(context, {
    code: 'unit-guessed',
    column,
    sentence: `${columnSpec(column).label} ${quoted(context.cells[column] ?? '')} has no unit; it makes sense in ${unit} and is read so.`,
    remedy: 'Write the unit after the number.',
  });
}

export function reportAmbiguous(context: CellContext, column: Column, taken: string): void {
  report(context, {
    code: 'number-ambiguous',
    column,
    sentence: `The comma in ${quoted(context.cells[column] ?? '')} may part thousands or decimals; it is read as ${taken}.`,
    remedy: 'Write the number without a thousands mark, with a point for decimals.',
  });
}
