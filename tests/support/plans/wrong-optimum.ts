/*
 * A small integer program that HiGHS 1.15.1 answers wrongly when its presolve is on: it calls 1 821.19 optimal.
 * Optimum 1 529.19, agreed by CBC, GLPK and HiGHS with presolve off; the coefficients, typed from the trial's file, stand in wrong-optimum.json.
 */
import { type Entry, type SparseModel, startModel } from '#lib/milp/sparse-model.ts';
import program from './wrong-optimum.json' with { type: 'json' };

export const TRUE_OPTIMUM = 1529.19;

export function wrongOptimumModel(): SparseModel {
  const model = startModel();
  for (const { cost, lower, upper, whole } of program.columns) model.column({ cost, lower, upper, integer: whole });
  for (const { relation, right, columns, values } of program.rows) {
    const entries = columns.map((column, index): Entry => [column, values[index] ?? Number.NaN]);
    model.row({ lower: relation === '=' ? right : Number.NEGATIVE_INFINITY, upper: right, entries });
  }
  return model.build();
}
