/*
 * A model with more rows: what cutting planes and side conditions are made of.
 * Invariant: the given model is not changed; its rows and columns keep their indexes.
 * Not here: which rows are worth adding.
 * Read next: cut-loop.ts.
 */
import { at, type Row, type SparseModel } from './sparse-model.ts';

export function appendRows(model: SparseModel, rows: readonly Row[]): SparseModel {
  if (rows.length === 0) return model;
  const entries = rows.flatMap((row) => row.entries);
  let next = at(model.rowStart, model.rows);
  const starts = rows.map((row) => {
    next += row.entries.length;
    return next;
  });
  return {
    ...model,
    rows: model.rows + rows.length,
    rowLower: joinNumbers(
      model.rowLower,
      rows.map((row) => row.lower),
    ),
    rowUpper: joinNumbers(
      model.rowUpper,
      rows.map((row) => row.upper),
    ),
    rowStart: Int32Array.from([...model.rowStart, ...starts]),
    entryColumn: joinIndexes(
      model.entryColumn,
      entries.map(([column]) => column),
    ),
    entryValue: joinNumbers(
      model.entryValue,
      entries.map(([, value]) => value),
    ),
  };
}

function joinNumbers(first: Float64Array, second: readonly number[]): Float64Array {
  const joined = new Float64Array(first.length + second.length);
  joined.set(first);
  joined.set(second, first.length);
  return joined;
}

function joinIndexes(first: Int32Array, second: readonly number[]): Int32Array {
  const joined = new Int32Array(first.length + second.length);
  joined.set(first);
  joined.set(second, first.length);
  return joined;
}
