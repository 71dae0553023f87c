/*
 * Text → table: commas, semicolons, tabs or pipes between cells, quoted cells with line breaks.
 * Invariant: every record of the text is a row, blank ones too; a quotation mark that never closes loses nothing.
 * Not here: encodings (decode-text.ts) and headers (find-header.ts).
 * Read next: read-table.ts.
 */
import Papa from 'papaparse';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { RawRow, RawTable } from './raw-table.ts';

/** Where two part the rows equally well the earlier wins. */
const DELIMITERS: readonly string[] = ['\t', ';', '|', ','];
const LOOKED_AT = 60;
/** Blank records count little, but a file of line breaks alone must not fill the memory. */
const MOST_RECORDS = LIMITS.list_rows * 5;

export function readDelimited(source: {
  readonly text: string;
  readonly name: string;
  readonly notes: readonly string[];
}): Result<RawTable> {
  const directive = /^\ufeff?sep=(.)\r?\n/.exec(source.text);
  const text = source.text.slice(directive?.[0].length ?? 0).replace(/^\ufeff/, '');
  const notes = [...source.notes];
  const delimiter = directive?.[1] ?? findDelimiter(text);
  let parsed = parse(text, { delimiter });
  if (parsed.errors.some((error) => error.code === 'MissingQuotes')) {
    notes.push('A quotation mark is opened and never closed; quotation marks were read as plain text.');
    parsed = parse(text, { delimiter, quoteChar: '\u0000' });
  }
  if (parsed.meta.truncated) return tooManyRows('more than can be counted');
  const rows: RawRow[] = parsed.data.map((cells, index) => ({ row: index + 1, cells }));
  while (rows.length > 0 && rows.at(-1)?.cells.every((cell) => cell.trim() === '')) rows.pop();
  return ok({ name: source.name, rows, notes });
}

/** The sign that parts most rows into the same number of cells, and into most cells. */
function findDelimiter(text: string): string {
  const start = text.slice(0, 200_000);
  const scored = DELIMITERS.map((delimiter) => {
    const records = Papa.parse<string[]>(start, { delimiter, preview: LOOKED_AT, skipEmptyLines: 'greedy' }).data;
    const counts = new Map<number, number>();
    for (const { length } of records) if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
    const best = Math.max(0, ...[...counts].map(([length, rows]) => length * (rows / records.length) ** 2));
    return { delimiter, best };
  });
  return scored.reduce((top, next) => (next.best > top.best ? next : top), { delimiter: ',', best: 0 }).delimiter;
}

function parse(
  text: string,
  options: { readonly delimiter: string; readonly quoteChar?: string },
): Papa.ParseResult<string[]> {
  return Papa.parse<string[]>(text, {
    ...options,
    skipEmptyLines: false,
    preview: MOST_RECORDS,
  });
}

export function tooManyRows(count: number | string): Result<never> {
  return failed({
    code: 'too-many-rows',
    sentence: `The list has ${count} rows; at most ${LIMITS.list_rows} are taken at once. Split it into several lists.`,
  });
}
