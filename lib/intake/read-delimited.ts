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

const DELIMITERS = [',', '\t', ';', '|'];
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
  let parsed = parse(text, { delimiter: directive?.[1] ?? '' });
  if (parsed.errors.some((error) => error.code === 'MissingQuotes')) {
    notes.push('A quotation mark is opened and never closed; quotation marks were read as plain text.');
    parsed = parse(text, { delimiter: parsed.meta.delimiter, quoteChar: '\u0000' });
  }
  if (parsed.meta.truncated) return tooManyRows('more than can be counted');
  const rows: RawRow[] = parsed.data.map((cells, index) => ({ row: index + 1, cells }));
  while (rows.length > 0 && rows.at(-1)?.cells.every((cell) => cell.trim() === '')) rows.pop();
  return ok({ name: source.name, rows, notes });
}

function parse(
  text: string,
  options: { readonly delimiter: string; readonly quoteChar?: string },
): Papa.ParseResult<string[]> {
  return Papa.parse<string[]>(text, {
    ...options,
    delimitersToGuess: DELIMITERS,
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
