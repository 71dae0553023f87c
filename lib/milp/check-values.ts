/*
 * Re-checks an answer against its model: whole numbers, column bounds, every row, and the objective added up afresh.
 * Invariant: trusts nothing that the solver reports; the values returned have whole numbers where the model wants them.
 * Not here: whether the answer is the best one (certificate.ts, branch-and-bound.ts).
 * Read next: certificate.ts.
 */
import { at, type SparseModel } from './sparse-model.ts';

export type CheckedValues =
  | { readonly kind: 'sound'; readonly values: Float64Array; readonly objective: number }
  | { readonly kind: 'unsound'; readonly sentence: string };

/** How far from a whole number a solver may stop; HiGHS's own mip_feasibility_tolerance is 1e-6. */
const WHOLE_TOLERANCE = 1e-5;
/** How far a row may be missed once whole numbers are rounded, relative to the size of its terms. */
const ROW_TOLERANCE = 1e-6;

export function checkValues(model: SparseModel, raw: ArrayLike<number>): CheckedValues {
  if (raw.length !== model.columns) return unsound(`The answer has ${raw.length} values for ${model.columns} columns.`);
  const values = new Float64Array(model.columns);
  let objective = 0;
  for (let column = 0; column < model.columns; column += 1) {
    const given = at(raw, column);
    if (!Number.isFinite(given)) return unsound(`Column ${column} has no finite value.`);
    const lower = at(model.columnLower, column);
    const upper = at(model.columnUpper, column);
    const whole = at(model.integer, column) === 1;
    const value = whole ? Math.round(given) : Math.min(Math.max(given, lower), upper);
    if (Math.abs(value - given) > WHOLE_TOLERANCE * Math.max(1, Math.abs(given))) {
      return unsound(`Column ${column} is ${given}, which is ${whole ? 'no whole number' : 'outside its bounds'}.`);
    }
    if (value < lower || value > upper) return unsound(`Column ${column} is ${value}, outside ${lower} to ${upper}.`);
    values[column] = value;
    objective += value * at(model.cost, column);
  }
  for (let row = 0; row < model.rows; row += 1) {
    const miss = rowMiss({ model, row, values });
    if (miss > 0) return unsound(`Row ${row} is missed by ${miss}.`);
  }
  return { kind: 'sound', values, objective };
}

function rowMiss({ model, row, values }: { model: SparseModel; row: number; values: Float64Array }): number {
  let activity = 0;
  let size = 1;
  for (let entry = at(model.rowStart, row); entry < at(model.rowStart, row + 1); entry += 1) {
    const term = at(model.entryValue, entry) * at(values, at(model.entryColumn, entry));
    activity += term;
    size = Math.max(size, Math.abs(term));
  }
  const miss = Math.max(at(model.rowLower, row) - activity, activity - at(model.rowUpper, row));
  return miss > ROW_TOLERANCE * size ? miss : 0;
}

function unsound(sentence: string): CheckedValues {
  return { kind: 'unsound', sentence };
}
