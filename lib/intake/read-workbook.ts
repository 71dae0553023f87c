/*
 * XLSX → one table a sheet; values as they were last shown, formulas never worked out.
 * Invariant: an archive is looked through before it is read, so that neither its size nor its reach can surprise.
 * Not here: other kinds of files (sniff-file.ts).
 * Read next: read-table.ts.
 */
import readSheets from 'read-excel-file/universal';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { RawRow, RawTable } from './raw-table.ts';
import { tooManyRows } from './read-delimited.ts';
import { scanSheet } from './scan-workbook.ts';
import { broken, readZipDirectory, type ZipEntry } from './zip-directory.ts';

/** Cells held in memory while reading, empty ones with a style included. */
const MOST_CELLS = 12_000_000;
const TITLE_ROWS = 200;

export async function readWorkbook(bytes: Uint8Array): Promise<Result<readonly RawTable[]>> {
  const directory = readZipDirectory(bytes);
  if (!directory.ok) return directory;
  const refused = refuseArchive(directory.value);
  if (refused !== null) return refused;
  for (const entry of directory.value) {
    if (!/\.xml$/.test(entry.name)) continue;
    const isSheet = /^xl\/worksheets\/[^/]+\.xml$/.test(entry.name);
    const reach = await scanSheet(bytes, entry);
    if (!reach.ok) return reach;
    if (!isSheet) continue;
    if (reach.value.lastRow > LIMITS.list_rows + TITLE_ROWS) return tooManyRows(reach.value.lastRow);
    if (reach.value.lastColumn > LIMITS.list_columns) return tooManyColumns(reach.value.lastColumn);
    if (reach.value.cellsHeld > MOST_CELLS) return tooManyColumns('far too many empty');
  }
  const copy = new Uint8Array(bytes).buffer;
  const sheets = await readSheets(copy).then(
    (read) => read,
    () => null,
  );
  if (sheets === null) return broken();
  return ok(sheets.map(({ sheet, data }) => ({ name: sheet, rows: rowsOf(data), notes: [] })));
}

function refuseArchive(entries: readonly ZipEntry[]): Result<never> | null {
  const names = new Set(entries.map((entry) => entry.name));
  const saveAs = 'Save it as XLSX or CSV and upload that.';
  if (entries.some((entry) => entry.encrypted)) {
    return failed({
      code: 'file-is-protected',
      sentence: 'The archive is protected by a password. Take the password off, save it, and upload that.',
    });
  }
  if (names.has('xl/workbook.bin'))
    return failed({
      code: 'file-is-binary-workbook',
      sentence: `The file is a binary workbook (.xlsb), which is not read. ${saveAs}`,
    });
  if (names.has('content.xml') && names.has('mimetype')) {
    return failed({
      code: 'file-is-open-document',
      sentence: `The file is an OpenDocument file, which is not read. ${saveAs}`,
    });
  }
  if (names.has('word/document.xml'))
    return failed({
      code: 'file-is-document',
      sentence: `The file is a text document with layout, not a list. Copy the table into a spreadsheet. ${saveAs}`,
    });
  if (!names.has('xl/workbook.xml') && ![...names].some((name) => /^xl\/worksheets\/.+\.xml$/.test(name))) {
    return failed({
      code: 'file-is-archive',
      sentence: 'The file is an archive without a workbook in it. Unpack it and upload the list itself.',
    });
  }
  return null;
}

function rowsOf(data: readonly (readonly unknown[])[]): readonly RawRow[] {
  const rows = data.map((cells, index) => ({ row: index + 1, cells: cells.map(cellText) }));
  while (rows.length > 0 && rows.at(-1)?.cells.every((cell) => cell === '')) rows.pop();
  return rows;
}

function cellText(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (value instanceof Date) return Number.isNaN(value.getTime()) ? '' : value.toISOString().slice(0, 10);
  if (typeof value === 'number') return Number.isFinite(value) ? String(Number(value.toPrecision(15))) : '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'string' ? value : '';
}

export function tooManyColumns(count: number | string): Result<never> {
  return failed({
    code: 'too-many-columns',
    sentence: `The list has ${count} columns; at most ${LIMITS.list_columns} are read. Copy the columns that matter into a new sheet.`,
  });
}
