/*
 * A table as it stands in a file: rows of texts with their numbers, before anything is understood.
 * Invariant: `row` counts as a spreadsheet counts, from 1; a line break inside a cell does not start a new row.
 * Not here: reading files (read-table.ts) and meaning (propose-mapping.ts).
 * Read next: read-table.ts.
 */
export interface RawRow {
  readonly row: number;
  readonly cells: readonly string[];
}

export interface RawTable {
  readonly name: string;
  readonly rows: readonly RawRow[];
  /** What was noticed while reading: encoding taken, quotation marks that never close. */
  readonly notes: readonly string[];
}

export function isBlankRow(row: RawRow): boolean {
  return row.cells.every((cell) => cell.trim() === '');
}
