/*
 * The linear relaxation of a program, tightened by rows that a caller finds for the fractions it sees.
 * Invariant: the bound is certified against the program with those rows, so it is as sound as the rows are.
 * Not here: finding the rows.
 * Read next: relaxation.ts.
 */
import type { Result } from '#lib/kernel/result.ts';
import { appendRows } from './append-rows.ts';
import { withSolver } from './highs-runtime.ts';
import { type Relaxed, runRelaxation } from './relaxation.ts';
import type { Row, SparseModel } from './sparse-model.ts';

export interface CutLoop {
  readonly relaxed: Relaxed;
  readonly model: SparseModel;
  readonly rounds: number;
  readonly seconds: number;
}

export async function relaxWithRows(request: {
  readonly model: SparseModel;
  /** Rows that the point does not meet; none ends the loop. */
  readonly rowsFor: (values: Float64Array) => readonly Row[];
  readonly rounds: number;
  readonly seconds: number;
}): Promise<Result<CutLoop>> {
  return withSolver({
    model: request.model,
    relax: 'integers dropped',
    options: { presolve: 'on', time_limit: request.seconds },
    work: (solver): CutLoop => {
      let { model } = request;
      const bounds = { lower: model.columnLower, upper: model.columnUpper };
      let relaxed = runRelaxation({ solver, model, bounds });
      let rounds = 0;
      while (rounds < request.rounds && relaxed.kind === 'bounded' && relaxed.finished) {
        const rows = request.rowsFor(relaxed.values);
        if (rows.length === 0) break;
        for (const row of rows) {
          solver.addRow(row.lower, row.upper, {
            indices: row.entries.map(([column]) => column),
            values: row.entries.map(([, value]) => value),
          });
        }
        model = appendRows(model, rows);
        const next = runRelaxation({ solver, model, bounds });
        rounds += 1;
        if (next.kind !== 'bounded' || !next.finished) break;
        relaxed = next;
      }
      return { relaxed, model, rounds, seconds: solver.getRunTime() };
    },
  });
}
