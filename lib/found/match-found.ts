/*
 * The rows of a filled-in as-found list → cells by column, whatever order and spelling its headers have.
 * Invariant: every row with something in it comes back with its own row number; a header that is not known is named.
 * Not here: reading the cells (read-found.ts).
 * Read next: read-found.ts, found-template.ts.
 */
import { headerKey } from '#lib/intake/plain-text.ts';
import { isBlankRow, type RawTable } from '#lib/intake/raw-table.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { FOUND_COLUMNS, type FoundCells, type FoundColumn } from './found-columns.ts';
import { foundSomething } from './read-found.ts';

export interface FoundRow {
  readonly row: number;
  readonly cells: FoundCells;
}

export interface FoundRows {
  readonly rows: readonly FoundRow[];
  /** Headers that mean nothing here; their columns are left out. */
  readonly unknown: readonly string[];
}

const BY_KEY: ReadonlyMap<string, FoundColumn> = new Map(
  FOUND_COLUMNS.flatMap(({ name, label, aliases }) =>
    [name, label, ...aliases].map((text) => [headerKey(text), name] as const),
  ),
);
/** Headers are looked for in the first rows, below a title. */
const LOOKED_AT = 10;

export function foundRows(table: RawTable): Result<FoundRows> {
  const head = table.rows.slice(0, LOOKED_AT).find(({ cells }) => columnsOf(cells).includes('tag'));
  if (head === undefined)
    return failed({
      code: 'found-no-tags',
      sentence: 'No column of this list is headed “Valve” or “Tag”: download the template and fill it in.',
    });
  const columns = columnsOf(head.cells);
  const rows = table.rows
    .filter((row) => row.row > head.row && !isBlankRow(row))
    .map(({ row, cells }) => ({ row, cells: cellsOf(cells, columns) }))
    .filter(({ cells }) => foundSomething(cells));
  const unknown = head.cells.filter((header, index) => header.trim() !== '' && columns[index] === null);
  return ok({ rows, unknown });
}

/** `Highest torque (N·m)` is Highest torque. */
function columnsOf(headers: readonly string[]): readonly (FoundColumn | null)[] {
  return headers.map((header) => BY_KEY.get(headerKey(header.replace(/\([^)]*\)\s*$/, ''))) ?? null);
}

function cellsOf(texts: readonly string[], columns: readonly (FoundColumn | null)[]): FoundCells {
  const cells: { [Column in FoundColumn]?: string } = {};
  columns.forEach((column, index) => {
    const text = texts[index]?.trim() ?? '';
    if (column !== null && text !== '') cells[column] = text;
  });
  return cells;
}
