/*
 * A customer's file → its tables, or a clear answer why not.
 * Invariant: any bytes give an answer within the limits; every sheet of a workbook is offered; nothing is understood yet.
 * Not here: what the columns mean (propose-mapping.ts).
 * Read next: sniff-file.ts, read-workbook.ts, read-delimited.ts.
 */
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { decodeText } from './decode-text.ts';
import { isBlankRow, type RawTable as Table } from './raw-table.ts';
import { readDelimited, tooManyRows } from './read-delimited.ts';
import { readWorkbook, tooManyColumns } from './read-workbook.ts';
import { sniffFile } from './sniff-file.ts';

export type RawTable = Table;

/** Header and title rows on top of the rows that are taken. */
const HEADER_ROWS = 30;

export async function readTables(file: {
  readonly bytes: Uint8Array;
  readonly fileName: string;
}): Promise<Result<readonly RawTable[]>> {
  const kind = sniffFile(file.bytes);
  if (!kind.ok) return kind;
  const tables = kind.value === 'text' ? readText(file) : await readWorkbook(file.bytes);
  if (!tables.ok) return tables;
  const filled = tables.value.filter((table) => !table.rows.every(isBlankRow));
  if (filled.length === 0) {
    return failed({
      code: 'file-empty',
      sentence: 'There is nothing in the file but empty cells. Check that it was saved before it was uploaded.',
    });
  }
  for (const table of filled) {
    const rows = table.rows.filter((row) => !isBlankRow(row)).length;
    if (rows > LIMITS.list_rows + HEADER_ROWS) return tooManyRows(rows);
    const columns = table.rows.reduce((widest, row) => Math.max(widest, lastFilled(row.cells)), 0);
    if (columns > LIMITS.list_columns) return tooManyColumns(columns);
  }
  return ok(filled);
}

function lastFilled(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell.trim() !== '') + 1;
}

function readText(file: { readonly bytes: Uint8Array; readonly fileName: string }): Result<readonly RawTable[]> {
  const decoded = decodeText(file.bytes);
  if (!decoded.ok) return decoded;
  const name = file.fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]{1,5}$/, '') || 'list';
  const table = readDelimited({ ...decoded.value, name });
  return table.ok ? ok([table.value]) : table;
}
