/*
 * A linear or integer program as sparse arrays, and a builder that fills them row by row.
 * Invariant: rows are in compressed form with ascending starts; a row names a column at most once; bounds are never crossed.
 * Not here: solving, and what rows and columns mean.
 * Read next: solve.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';

/** Minimise cost·x over rowLower ≤ A·x ≤ rowUpper, columnLower ≤ x ≤ columnUpper, with some x whole numbers. */
export interface SparseModel {
  readonly columns: number;
  readonly rows: number;
  readonly cost: Float64Array;
  readonly columnLower: Float64Array;
  readonly columnUpper: Float64Array;
  /** 1 where the column must be a whole number. */
  readonly integer: Uint8Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  /** Row i holds entries rowStart[i] … rowStart[i + 1] − 1. */
  readonly rowStart: Int32Array;
  readonly entryColumn: Int32Array;
  readonly entryValue: Float64Array;
}

export interface Column {
  readonly cost: number;
  readonly lower: number;
  readonly upper: number;
  readonly integer: boolean;
}

export type Entry = readonly [column: number, value: number];

export interface Row {
  readonly lower: number;
  readonly upper: number;
  readonly entries: readonly Entry[];
}

export interface ModelBuilder {
  /** Adds a column and returns its index. */
  readonly column: (column: Column) => number;
  /** Adds a row and returns its index. Entries of the same column are added up. */
  readonly row: (row: Row) => number;
  readonly build: () => SparseModel;
}

export function startModel(): ModelBuilder {
  const columns: Column[] = [];
  const rowLower: number[] = [];
  const rowUpper: number[] = [];
  const rowStart: number[] = [0];
  const entryColumn: number[] = [];
  const entryValue: number[] = [];
  return {
    column: (column) => {
      invariant(Number.isFinite(column.cost), 'A column has a finite cost.');
      invariant(column.lower <= column.upper, 'The lower bound of a column is not above its upper bound.');
      return columns.push(column) - 1;
    },
    row: ({ lower, upper, entries }) => {
      invariant(lower <= upper, 'The lower bound of a row is not above its upper bound.');
      for (const [column, value] of addedUp(entries)) {
        invariant(column >= 0 && column < columns.length, 'A row names only columns that exist.');
        invariant(Number.isFinite(value), 'A coefficient is finite.');
        entryColumn.push(column);
        entryValue.push(value);
      }
      rowLower.push(lower);
      rowUpper.push(upper);
      return rowStart.push(entryColumn.length) - 2;
    },
    build: () => ({
      columns: columns.length,
      rows: rowLower.length,
      cost: Float64Array.from(columns, (column) => column.cost),
      columnLower: Float64Array.from(columns, (column) => column.lower),
      columnUpper: Float64Array.from(columns, (column) => column.upper),
      integer: Uint8Array.from(columns, (column) => (column.integer ? 1 : 0)),
      rowLower: Float64Array.from(rowLower),
      rowUpper: Float64Array.from(rowUpper),
      rowStart: Int32Array.from(rowStart),
      entryColumn: Int32Array.from(entryColumn),
      entryValue: Float64Array.from(entryValue),
    }),
  };
}

function addedUp(entries: readonly Entry[]): readonly Entry[] {
  const sums = new Map<number, number>();
  for (const [column, value] of entries) sums.set(column, (sums.get(column) ?? 0) + value);
  return [...sums].filter(([, value]) => value !== 0);
}

/** The value at an index that is known to be inside the array. */
export function at(values: ArrayLike<number>, index: number): number {
  const value = values[index];
  invariant(value !== undefined, `Index ${index} is outside an array of ${values.length}.`);
  return value;
}
