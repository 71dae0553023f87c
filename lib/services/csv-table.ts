/*
 * Tables of texts as CSV, out and in again without a letter lost, and what an import shows of each row before it is taken.
 * Invariant: what was written reads back as the same texts; a text that a spreadsheet would take for a formula is written with an apostrophe before it.
 * Not here: what the columns mean (import-catalogue.ts, rates-csv.ts).
 * Read next: import-catalogue.ts.
 */
import Papa from 'papaparse';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

export interface CsvTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

interface NumberedTable extends CsvTable {
  /** Number of each row as a spreadsheet counts; rows that hold nothing are passed over. */
  readonly numbers: readonly number[];
}

export interface ImportRow {
  /** As a spreadsheet counts: the heading is row 1. */
  readonly row: number;
  readonly name: string;
  readonly kind: 'added' | 'changed' | 'same' | 'refused';
  readonly differences: readonly { readonly column: string; readonly before: string; readonly after: string }[];
  readonly problems: readonly { readonly column: string; readonly sentence: string }[];
}

export interface ImportPreview {
  readonly rows: readonly ImportRow[];
  /** What the preview was made against; taking it asks for the same. */
  readonly seen: string;
}

export const NOTHING_REFUSED_FIRST = {
  code: 'import-refused-rows',
  sentence: 'Nothing was taken, because some rows are refused: put them right in the file and look at it again.',
} as const;

export const SEEN_BEFORE = {
  code: 'changed-meanwhile',
  sentence: 'The house changed since you looked at this file. Look at it again, then take it.',
} as const;

const FORMULA = /^[=+\-@\t\r']/;

/** With a byte-order mark, so that a spreadsheet reads it as Unicode. */
export function writeCsv({ columns, rows }: CsvTable): string {
  const shielded = rows.map((row) => row.map((text) => (FORMULA.test(text) && !isNumber(text) ? `'${text}` : text)));
  return `\uFEFF${Papa.unparse(
    [columns, ...shielded].map((row) => [...row]),
    { newline: '\r\n' },
  )}\r\n`;
}

export function readCsv(text: string): Result<NumberedTable> {
  if (text.length > LIMITS.list_bytes)
    return failed({
      code: 'csv-too-large',
      sentence: `A file may hold at most ${LIMITS.list_bytes / 1024 / 1024} MB: split it by role or by number.`,
    });
  const bare = text.replace(/^\uFEFF/, '');
  const parsed = Papa.parse<string[]>(bare, { skipEmptyLines: false, delimiter: delimiterOf(bare) });
  const [columns, ...rows] = parsed.data;
  const broken = parsed.errors.find(({ type }) => type === 'Quotes');
  if (broken !== undefined)
    return failed({
      code: 'csv-unreadable',
      sentence: `Row ${(broken.row ?? 0) + 1} has a quotation mark that is not closed: save the file as CSV once more.`,
    });
  if (columns === undefined || columns.length < 2)
    return failed({
      code: 'csv-unreadable',
      sentence:
        'The file holds no table: its first row must hold the names of the columns, as in the file that is saved here.',
    });
  const filled = rows.flatMap((row, index) =>
    row.some((text) => text.trim() !== '') ? [{ row, number: index + 2 }] : [],
  );
  return ok({
    columns: columns.map((name) => name.trim()),
    numbers: filled.map(({ number }) => number),
    rows: filled.map(({ row }) => columns.map((_name, index) => (row[index] ?? '').replace(/^'(?=[=+\-@\t\r'])/, ''))),
  });
}

/** What divides the most names of the first row; the rows below it may hold any mark. */
function delimiterOf(text: string): string {
  const widths = [',', ';', '\t'].map((delimiter) => {
    const [head = []] = Papa.parse<string[]>(text, { delimiter, preview: 1 }).data;
    return { delimiter, width: head.length };
  });
  return widths.toSorted((a, b) => b.width - a.width)[0]?.delimiter ?? ',';
}

function isNumber(text: string): boolean {
  return /^-?\d+(\.\d+)?(e[-+]?\d+)?$/i.test(text);
}

/** Refuses a heading that nothing here reads, and one that stands twice. */
export function checkColumns(table: CsvTable, known: readonly string[]): Result<true> {
  const strange = table.columns.find((name) => name !== '' && !known.includes(name));
  if (strange !== undefined)
    return failed({
      code: 'csv-column-unknown',
      sentence: `Column “${strange}” is not known here. The columns are: ${known.join(', ')}. Save the file of this role first and keep its first row.`,
    });
  const twice = table.columns.find((name, index) => name !== '' && table.columns.indexOf(name) < index);
  if (twice === undefined) return ok(true);
  return failed({ code: 'csv-column-twice', sentence: `Column “${twice}” stands twice: take one of them out.` });
}
