/*
 * Judges a column by its cells: whether they can be read as the column that the header promises, or what they look like.
 * Invariant: judged on a sample spread over the whole list; the same list gives the same judgement.
 * Not here: headers (match-header.ts).
 * Read next: propose-mapping.ts.
 */
import { LIMITS } from '#lib/kernel/limits.ts';
import { parseNumber } from '#lib/units/parse-number.ts';
import type { Column } from './columns.ts';
import type { Confidence, Field } from './match-header.ts';
import { isNominalMm } from './nominal-sizes.ts';
import { isMissing, tidyCell } from './plain-text.ts';
import type { RawTable } from './raw-table.ts';
import { readLine } from './read-line.ts';
import { ratingOf } from './read-rating.ts';
import { readSizeText } from './read-size.ts';
import { recogniseKind } from './recognise-kind.ts';
import { turnedByHeader, withUnit } from './take-cells.ts';

const SAMPLE = 120;
const TAKEN_AS_TEXT: ReadonlySet<Field> = new Set(['tag', 'location', 'notes', 'photo', 'remark', 'ignore']);
const UNREADABLE_CODES: ReadonlySet<string> = new Set(['value-unreadable', 'choice-unknown']);
/** Where only words in a header speak for the column, its cells must make sense in it as well. */
const SENSELESS_CODES: ReadonlySet<string> = new Set([...UNREADABLE_CODES, 'value-implausible', 'value-unlikely']);

/** Up to 120 filled cells of a column, spread evenly over the rows below the header. */
export function sampleColumn(
  table: RawTable,
  place: { readonly index: number; readonly headerRow: number | null },
): readonly string[] {
  const filled: string[] = [];
  for (const row of table.rows) {
    const cell = row.cells[place.index];
    if (cell !== undefined && row.row > (place.headerRow ?? 0) && !isMissing(cell)) filled.push(cell);
  }
  const step = Math.max(1, Math.floor(filled.length / SAMPLE));
  return filled
    .filter((_cell, index) => index % step === 0)
    .slice(0, SAMPLE)
    .map((cell) => tidyCell(cell.slice(0, LIMITS.cell_characters)));
}

/** Share of the sample that can be read as the column; 1 for columns that take any text. */
export function readableShare(
  sample: readonly string[],
  question: {
    readonly column: Field;
    readonly header: string;
    readonly unit?: string | undefined;
    readonly confidence: Confidence;
  },
): number {
  const { column, header, unit } = question;
  const codes = question.confidence === 'sure' ? UNREADABLE_CODES : SENSELESS_CODES;
  if (sample.length === 0 || column === 'remark' || column === 'ignore' || TAKEN_AS_TEXT.has(column)) return 1;
  const read = sample.filter((cell) =>
    isReadable({
      column,
      text: withUnit({ text: turnedByHeader({ header, field: column, text: cell }), column, unit }),
      codes,
    }),
  );
  return read.length / sample.length;
}

function isReadable({
  column,
  text,
  codes,
}: {
  readonly column: Column;
  readonly text: string;
  readonly codes: ReadonlySet<string>;
}): boolean {
  if (column === 'valve_type') return recogniseKind(text) !== null;
  const { problems } = readLine({ row: 0, cells: { [column]: text } });
  return !problems.some((problem) => problem.column === column && codes.has(problem.code));
}

export interface Looks {
  readonly field: Field;
  readonly why: string;
}

/** What a column without a known header looks like. */
export function lookOf(sample: readonly string[]): Looks {
  if (sample.length === 0) return { field: 'ignore', why: 'The column is empty.' };
  const share = (test: (cell: string) => boolean): number => sample.filter(test).length / sample.length;
  if (share((cell) => /\.(?:jpe?g|png|heic|gif|tiff?|pdf)$/i.test(cell)) > 0.6)
    return { field: 'photo', why: 'The cells are names of pictures.' };
  if (share(isDateLike) > 0.6) return { field: 'ignore', why: 'The cells are dates.' };
  if (share(isKindOfValve) > 0.5) return { field: 'valve_type', why: 'The cells name kinds of valves.' };
  if (share(isKindOrLineValve) > 0.8) return { field: 'valve_type', why: 'The cells name valves.' };
  if (share((cell) => /^(?:pn\s?\d|class|cl\s?\d|ansi|\d+\s?k$|\d+\s?#)/i.test(cell) && ratingOf(cell) !== null) > 0.6)
    return { field: 'rating', why: 'The cells are pressure classes.' };
  if (share((cell) => /["”″]|mm$|^dn|\bin(?:ch)?$/i.test(cell) && readSizeText(cell).kind === 'size') > 0.6)
    return { field: 'size', why: 'The cells are valve sizes with their unit.' };
  if (share(isBareNominal) > 0.8) return { field: 'size', why: 'All cells are nominal sizes.' };
  if (isCodeColumn(sample)) return { field: 'tag', why: 'Each cell is a short code that occurs once.' };
  if (share((cell) => /\p{L}{3}/u.test(cell)) > 0.5)
    return { field: 'remark', why: 'The cells are words; values in them are read.' };
  return { field: 'ignore', why: 'Nothing in it was recognised.' };
}

function isDateLike(cell: string): boolean {
  return /^\d{4}[-/]\d{1,2}[-/]\d{1,2}|^\d{1,2}[./-]\d{1,2}[./-]\d{2,4}(?:\s|$)/.test(cell);
}

function isKindOfValve(cell: string): boolean {
  const kind = cell.length < 40 ? recogniseKind(cell) : null;
  return kind?.kind === 'valve' || (kind?.kind === 'not operated' && kind.what.includes('valve'));
}

function isKindOrLineValve(cell: string): boolean {
  const kind = cell.length < 30 ? recogniseKind(cell) : null;
  return kind !== null && (kind.kind !== 'not operated' || kind.what.includes('valve'));
}

function isBareNominal(cell: string): boolean {
  const value = parseNumber(cell)?.value;
  return value !== undefined && value >= 40 && isNominalMm(value);
}

function isCodeColumn(sample: readonly string[]): boolean {
  const codes = sample.filter(
    (cell) => cell.length <= 24 && /\d/.test(cell) && !/\s.*\s/.test(cell) && !/^-?\d+[.,]\d+$/.test(cell),
  );
  return codes.length === sample.length && new Set(codes).size === codes.length;
}
