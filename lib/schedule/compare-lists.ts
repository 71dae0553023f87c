/*
 * A changed list beside the schedule: rows that came, lines that are gone, and cells that say something else.
 * Invariant: a list compared with what was taken from it shows nothing; a column that the list does not have is never taken for emptied.
 * Not here: pairing rows and lines (match-lines.ts) and what is taken of it (take-comparison.ts).
 * Read next: match-lines.ts, take-comparison.ts.
 */
import type { Column } from '#lib/intake/column-names.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { type LineThere, type ListedRow, matchLines, type Pair } from './match-lines.ts';

export interface CellDifference {
  readonly column: Column;
  /** What the list before said; null where no list said anything of the line. */
  readonly before: string | null;
  /** What the schedule says now. */
  readonly now: string;
  /** What the changed list says. */
  readonly next: string;
  /** `conflict`: the Desk wrote or measured it since, and the list changed it too. */
  readonly kind: 'changed' | 'conflict';
}

export interface ChangedLine {
  readonly lineId: number;
  readonly row: number;
  readonly by: Pair['by'];
  readonly cells: readonly CellDifference[];
}

export interface GoneLine {
  readonly lineId: number;
  /** `typed`: no list had it. `edited`: the Desk wrote in it since. */
  readonly kind: 'listed' | 'edited' | 'typed';
}

export interface Comparison {
  readonly added: readonly ListedRow[];
  readonly gone: readonly GoneLine[];
  readonly changed: readonly ChangedLine[];
  /** Lines of which the list says what it said before. */
  readonly same: number;
  /** Whether the list has the lines in another order. */
  readonly order: 'same' | 'other';
  readonly pairs: readonly { readonly lineId: number; readonly row: number }[];
}

export interface ListsToCompare {
  /** In the order of the schedule. */
  readonly lines: readonly LineThere[];
  /** In the order of the list. */
  readonly rows: readonly ListedRow[];
  /** Columns that the changed list has. */
  readonly columns: readonly Column[];
}

export function compareLists({ lines, rows, columns }: ListsToCompare): Comparison {
  const pairs = matchLines({ lines, rows });
  const paired = new Map(pairs.map((pair) => [pair.line, pair]));
  const byRow = new Map(pairs.map((pair) => [pair.listed, pair]));
  const scope = columnsSaid({ rows, columns });
  const changed = lines.flatMap((line) => {
    const pair = paired.get(line);
    if (!pair) return [];
    const cells = differences(pair, scope);
    return cells.length === 0 ? [] : [{ lineId: line.id, row: pair.listed.row, by: pair.by, cells }];
  });
  return {
    added: rows.filter((row) => !byRow.has(row)),
    gone: lines.filter((line) => !paired.has(line)).map(goneLine),
    changed,
    same: pairs.length - changed.length,
    order: orderOf(
      lines,
      rows.flatMap((row) => byRow.get(row)?.line ?? []),
    ),
    pairs: rows.flatMap((row) => {
      const pair = byRow.get(row);
      return pair ? [{ lineId: pair.line.id, row: row.row }] : [];
    }),
  };
}

/** The columns that the list has, and those that were read out of its remarks. */
export function columnsSaid({ rows, columns }: Pick<ListsToCompare, 'rows' | 'columns'>): ReadonlySet<Column> {
  const scope = new Set(columns);
  for (const { cells } of rows) for (const column of namesOf(cells)) scope.add(column);
  return scope;
}

function namesOf(cells: Cells): readonly Column[] {
  return Object.keys(cells) as Column[];
}

function differences({ line, listed }: Pair, scope: ReadonlySet<Column>): readonly CellDifference[] {
  return [...scope].flatMap((column) => {
    const now = (line.cells[column] ?? '').trim();
    const next = (listed.cells[column] ?? '').trim();
    const before = line.listed === null ? null : (line.listed[column] ?? '').trim();
    if (next === now || next === before) return [];
    const untouched = (before === null ? now === '' : now === before) && !line.measured.includes(column);
    return [{ column, before, now, next, kind: untouched ? ('changed' as const) : ('conflict' as const) }];
  });
}

function goneLine({ id, cells, listed, measured }: LineThere): GoneLine {
  if (listed === null) return { lineId: id, kind: 'typed' };
  const columns = new Set([...namesOf(cells), ...namesOf(listed)]);
  const isEdited = [...columns].some((column) => (cells[column] ?? '').trim() !== (listed[column] ?? '').trim());
  return { lineId: id, kind: isEdited || measured.length > 0 ? 'edited' : 'listed' };
}

function orderOf(lines: readonly LineThere[], inList: readonly LineThere[]): Comparison['order'] {
  const places = new Map(lines.map((line, at) => [line, at]));
  const isSame = inList.every((line, at) => {
    const before = inList[at - 1];
    return before === undefined || (places.get(before) ?? 0) < (places.get(line) ?? 0);
  });
  return isSame ? 'same' : 'other';
}
