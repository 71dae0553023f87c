/*
 * The WebAssembly solver: loaded once, thrown away after an abort and loaded anew, its models always disposed.
 * Invariant: a call that aborts is an answer with a reason, and the next call starts from a fresh runtime.
 * Not here: reading and checking of answers (solve.ts, relaxation.ts).
 * Read next: solve.ts.
 */
import loadHighs, { type Highs, type Model, type ModelData } from 'highs';
import { InvariantError } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { at, type SparseModel } from './sparse-model.ts';

let runtime: Promise<Highs> | undefined;

/** The wasm heap only grows: a model beyond this is refused with a sentence. Some 6 kB a column were seen in trials. */
export const COLUMN_LIMIT = 250_000;

export async function withSolver<Value>(request: {
  readonly model: SparseModel;
  readonly relax: 'integers kept' | 'integers dropped';
  readonly options: Readonly<Record<string, string | number | boolean>>;
  readonly work: (solver: Model, highs: Highs) => Value;
}): Promise<Result<Value>> {
  if (request.model.columns > COLUMN_LIMIT) {
    return failed({
      code: 'program-too-large',
      sentence: `The program has ${request.model.columns} columns; the limit is ${COLUMN_LIMIT}. Split the list.`,
    });
  }
  try {
    runtime ??= loadHighs();
    const highs = await runtime;
    return ok(
      highs.withModel(modelData(request.model, request.relax), (solver) => {
        solver.options.set({ output_flag: false, random_seed: 0, ...request.options });
        return request.work(solver, highs);
      }),
    );
  } catch (error) {
    // A programmer's mistake is no abort of the solver.
    if (error instanceof InvariantError || error instanceof TypeError || error instanceof ReferenceError) throw error;
    // An abort leaves the heap in an unknown state: the next call loads a new runtime.
    runtime = undefined;
    return failed({
      code: 'solver-stopped',
      sentence: `The solver stopped unexpectedly (${error instanceof Error ? error.message : String(error)}); it is restarted for the next run.`,
    });
  }
}

function modelData(model: SparseModel, relax: 'integers kept' | 'integers dropped'): ModelData {
  return {
    numCols: model.columns,
    numRows: model.rows,
    colCost: model.cost,
    colLower: model.columnLower,
    colUpper: model.columnUpper,
    rowLower: model.rowLower,
    rowUpper: model.rowUpper,
    matrix: {
      format: 'csr',
      numRows: model.rows,
      numCols: model.columns,
      starts: model.rowStart,
      indices: model.entryColumn,
      values: model.entryValue,
    },
    ...(relax === 'integers kept' ? { integrality: Int32Array.from(model.integer) } : {}),
  };
}

/** Counts that HiGHS gives as number or bigint. */
export function infoNumber(solver: Model, name: string): number {
  return Number(solver.info.get(name));
}

/** Whether the solver holds the model that was passed: a count read back, for a text format once lost columns silently. */
export function holdsModel(solver: Model, model: SparseModel): boolean {
  const held = solver.getDimensions();
  return (
    held.numCols === model.columns && held.numRows === model.rows && held.numNonzeros === at(model.rowStart, model.rows)
  );
}
