/*
 * Takes the rows of a table with a mapping: lines, things set aside, problems, and counts that add up.
 * Invariant: rows = lines + set aside + refused + blank; tags are unique; no row is lost and none stops the others.
 * Not here: reading one line (read-line.ts) and storing (services).
 * Read next: sort-row.ts, take-cells.ts, read-line.ts.
 */
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { parseNumber } from '#lib/units/parse-number.ts';
import { COLUMN_NAMES } from './column-names.ts';
import type { Cells } from './columns.ts';
import type { IntakeProblem as Problem } from './intake-problem.ts';
import { isNps } from './nominal-sizes.ts';
import { plainText, quoted, tidyCell } from './plain-text.ts';
import { type Mapping, unitsRow } from './propose-mapping.ts';
import { isBlankRow, type RawRow, type RawTable } from './raw-table.ts';
import { readLine } from './read-line.ts';
import { sortRow } from './sort-row.ts';
import { plainNumber, takeCells } from './take-cells.ts';

export type IntakeProblem = Problem;

export interface TakenLine {
  readonly row: number;
  readonly cells: Cells;
  readonly line: ScheduleLine;
  readonly problems: readonly IntakeProblem[];
}

export interface SetAside {
  readonly row: number;
  readonly tag: string;
  readonly reason: string;
  readonly cells: Cells;
}

export interface Taken {
  readonly lines: readonly TakenLine[];
  readonly setAside: readonly SetAside[];
  readonly problems: readonly IntakeProblem[];
  readonly counts: {
    readonly rows: number;
    readonly lines: number;
    readonly setAside: number;
    readonly refused: number;
    readonly blank: number;
  };
}

interface Taking {
  readonly lines: TakenLine[];
  readonly setAside: SetAside[];
  readonly problems: IntakeProblem[];
  readonly rowOfTag: Map<string, number>;
  readonly rowsAtPlace: Map<string, { readonly row: number; readonly cells: Cells }[]>;
  readonly hasTags: boolean;
  refused: number;
  blank: number;
}

export function takeRows(source: { readonly table: RawTable; readonly mapping: Mapping }): Taken {
  const { table } = source;
  const headerRow = source.mapping.headerRow ?? 0;
  const rows = table.rows.filter((row) => row.row > headerRow);
  const problems: IntakeProblem[] = titleRows(table, headerRow);
  const mapping = inchColumns({ mapping: source.mapping, rows, problems });
  const hasTags = mapping.columns.some((column) => column.field === 'tag');
  const taking: Taking = {
    lines: [],
    setAside: [],
    problems,
    rowOfTag: new Map(),
    rowsAtPlace: new Map(),
    hasTags,
    refused: 0,
    blank: 0,
  };
  if (!hasTags) problems.push(noTags(headerRow));
  const skip = headRows({ table, mapping, headerRow });
  for (const row of rows) takeRow({ row, mapping, taking, repeatsHead: skip });
  const { lines, setAside, refused, blank } = taking;
  return {
    lines,
    setAside,
    problems,
    counts: { rows: rows.length, lines: lines.length, setAside: setAside.length, refused, blank },
  };
}

function takeRow(parts: {
  readonly row: RawRow;
  readonly mapping: Mapping;
  readonly taking: Taking;
  readonly repeatsHead: (row: RawRow) => boolean;
}): void {
  const { row, mapping, taking } = parts;
  if (isBlankRow(row)) {
    taking.blank += 1;
    return;
  }
  if (parts.repeatsHead(row)) {
    refuse(taking, {
      row: row.row,
      code: 'header-repeated',
      sentence: 'The row repeats the headers or gives their units; it is not a valve.',
    });
    return;
  }
  const { cells, problems } = takeCells(row, mapping);
  const mapped = mapping.columns.filter((column) => column.field !== 'ignore');
  const sorted = sortRow({
    cells,
    filledCells: row.cells.filter((cell) => cell.trim() !== '').length,
    mappedColumns: mapped.length,
  });
  if (sorted.kind === 'refused') {
    refuse(taking, { row: row.row, code: sorted.code, sentence: sorted.sentence });
    return;
  }
  if (sorted.kind === 'set aside') {
    taking.setAside.push({ row: row.row, tag: cells.tag ?? `row ${row.row}`, reason: sorted.reason, cells });
    if (sorted.contradiction !== undefined) {
      taking.problems.push({
        code: 'kind-remark-disagrees',
        row: row.row,
        column: 'valve_type',
        severity: 'doubt',
        sentence: sorted.contradiction,
        remedy: 'Correct the valve type to take the row in as a line.',
      });
    }
    return;
  }
  const read = readLine({ row: row.row, cells });
  const own = [...problems, ...read.problems];
  const tag = uniqueTag({ row: row.row, tag: cells.tag, taking, own });
  noteSameFacts({ row: row.row, cells, taking, own });
  taking.lines.push({ row: row.row, cells, line: { ...read.line, tag }, problems: own });
  taking.problems.push(...own);
}

function refuse(
  taking: Taking,
  problem: {
    readonly row: number;
    readonly code: 'header-repeated' | 'total-row' | 'no-valve-facts';
    readonly sentence: string;
  },
): void {
  taking.refused += 1;
  taking.problems.push({
    ...problem,
    column: 'row',
    severity: 'refused',
    remedy: 'If it is a valve, add it as a line by hand.',
  });
}

/** The tag itself, or with its row where it is missing or was used before. */
function uniqueTag(parts: {
  readonly row: number;
  readonly tag: string | undefined;
  readonly taking: Taking;
  readonly own: IntakeProblem[];
}): string {
  const { row, tag, taking, own } = parts;
  if (tag === undefined) {
    if (taking.hasTags)
      own.push({
        code: 'tag-missing',
        row,
        column: 'tag',
        severity: 'note',
        sentence: `The row has no tag; it goes by “row ${row}”.`,
        remedy: 'Write the name that stands on the valve.',
      });
    return freeTag(taking, { tag: `row ${row}`, row });
  }
  const before = taking.rowOfTag.get(plainText(tag));
  if (before === undefined) return freeTag(taking, { tag, row });
  own.push({
    code: 'tag-repeated',
    row,
    column: 'tag',
    severity: 'doubt',
    sentence: `The tag ${quoted(tag)} is used in row ${before} and in row ${row}; both stay lines, this one as “${tag} (row ${row})”.`,
    remedy: 'Give each valve its own tag, or take one of the rows out.',
  });
  return freeTag(taking, { tag: `${tag} (row ${row})`, row });
}

function freeTag(taking: Taking, wanted: { readonly tag: string; readonly row: number }): string {
  let tag = wanted.tag;
  while (taking.rowOfTag.has(plainText(tag))) tag = `${tag}'`;
  taking.rowOfTag.set(plainText(tag), wanted.row);
  return tag;
}

/** The same valve may have been listed twice; both stay lines. */
function noteSameFacts(parts: {
  readonly row: number;
  readonly cells: Cells;
  readonly taking: Taking;
  readonly own: IntakeProblem[];
}): void {
  const { row, taking, own } = parts;
  const { cells } = parts;
  if (cells.location === undefined) return;
  const key = `${cells.location}\n${cells.valve_type}\n${cells.size}\n${cells.notes}`;
  const alike = taking.rowsAtPlace.get(key) ?? [];
  if (alike.length === 0) taking.rowsAtPlace.set(key, alike);
  const before = alike.find((earlier) => saysTheSame(earlier.cells, cells))?.row;
  if (before === undefined) {
    if (alike.length < ROWS_COMPARED) alike.push({ row, cells });
    return;
  }
  own.push({
    code: 'same-as-row',
    row,
    column: 'row',
    severity: 'note',
    sentence: `Row ${row} says the same as row ${before}, place included; both stay lines.`,
    remedy: 'Ask whether it is one valve listed twice.',
  });
}

/** Rows of one place, kind and size that are told apart by their other facts; more are hardly ever there. */
const ROWS_COMPARED = 50;

/** All facts but the tag. */
function saysTheSame(a: Cells, b: Cells): boolean {
  return COLUMN_NAMES.every((name) => name === 'tag' || a[name] === b[name]);
}

function titleRows(table: RawTable, headerRow: number): IntakeProblem[] {
  return table.rows
    .filter((row) => row.row < headerRow && !isBlankRow(row))
    .map((row) => ({
      code: 'title-row',
      row: row.row,
      column: 'row',
      severity: 'note',
      sentence: `Row ${row.row} stands above the headers and is not read: ${quoted(tidyCell(row.cells.find((cell) => cell.trim() !== '') ?? ''))}.`,
      remedy: 'Nothing, unless the headers were found in the wrong row.',
    }));
}

function noTags(headerRow: number): IntakeProblem {
  return {
    code: 'tag-missing',
    row: Math.max(1, headerRow),
    column: 'tag',
    severity: 'note',
    sentence: 'No column holds tags; each line goes by its row.',
    remedy: 'Say which column names the valves, if there is one.',
  };
}

/** Whether a row repeats the headers (as on each printed page) or gives the units of the columns. */
function headRows(parts: {
  readonly table: RawTable;
  readonly mapping: Mapping;
  readonly headerRow: number;
}): (row: RawRow) => boolean {
  const headers = parts.mapping.columns.map((column) => plainText(column.header));
  const filled = headers.filter((header) => header !== '').length;
  const units = unitsRow(parts.table, parts.mapping.headerRow);
  return (row) => {
    if (units !== null && row.cells === units) return true;
    if (filled < 2) return false;
    const same = parts.mapping.columns.filter(
      (column, at) => headers[at] !== '' && plainText(row.cells[column.index] ?? '') === headers[at],
    );
    return same.length >= Math.max(2, filled * 0.6);
  };
}

/** Bare sizes that can only be inches as a whole (4, 6, 8, 20): the column is read in inches, and a problem says so once. */
function inchColumns(parts: {
  readonly mapping: Mapping;
  readonly rows: readonly RawRow[];
  readonly problems: IntakeProblem[];
}): Mapping {
  const columns = parts.mapping.columns.map((column) => {
    if (column.field !== 'size' || column.unit !== undefined) return column;
    const bare = parts.rows.flatMap(
      (row) => parseNumber(plainNumber(tidyCell(row.cells[column.index] ?? '')))?.value ?? [],
    );
    const small = bare.filter((value) => value > 0 && value < 15);
    if (bare.length < 3 || small.length < bare.length * 0.3 || !bare.every((value) => value <= 72 && isNps(value)))
      return column;
    parts.problems.push({
      code: 'unit-guessed',
      row: Math.max(1, parts.mapping.headerRow ?? 1),
      column: 'size',
      severity: 'doubt',
      sentence: `The sizes in ${quoted(column.header)} have no unit and make sense in inches only; the whole column is read so.`,
      remedy: 'Write the unit in the header, for example “Size (in)”.',
    });
    return { ...column, unit: 'in' };
  });
  return { ...parts.mapping, columns };
}
