import { describe, expect, it } from 'vitest';
import { COLUMN_LIMIT } from '#lib/milp/highs-runtime.ts';
import { solveMilp } from '#lib/milp/solve.ts';
import { type SparseModel, startModel } from '#lib/milp/sparse-model.ts';
import { coveringProgram, enumerateProgram, meetsRows, randomProgram } from '#tests/support/plans/random-program.ts';
import { wrongOptimumModel } from '#tests/support/plans/wrong-optimum.ts';

const CASES = 250;

describe('solveMilp', () => {
  it.each(['on', 'off'] as const)(
    `finds the best point, or that there is none, of ${CASES} random integer programs (presolve %s)`,
    async (presolve) => {
      const seen = { solved: 0, infeasible: 0 };
      for (let seed = 1; seed <= CASES; seed += 1) {
        const model = randomProgram(seed);
        const { objective } = enumerateProgram(model);
        const answer = await solveMilp(model, { presolve, seconds: 20 });
        const where = `seed ${seed}`;
        if (Number.isFinite(objective)) {
          expect(answer, where).toMatchObject({ kind: 'solved', stop: 'gap reached' });
          if (answer.kind !== 'solved') continue;
          expect(answer.objective, where).toBeCloseTo(objective, 9);
          expect(answer.bound, where).toBeLessThanOrEqual(objective + 1e-6);
          expect(meetsRows(model, answer.values), where).toBe(true);
          seen.solved += 1;
        } else {
          expect(answer.kind, where).toBe('infeasible');
          seen.infeasible += 1;
        }
      }
      console.info(`integer programs with presolve ${presolve}: ${JSON.stringify(seen)}`);
      expect(seen.solved).toBeGreaterThan(100);
      expect(seen.infeasible).toBeGreaterThan(20);
    },
    60_000,
  );

  it.each(['on', 'off'] as const)('says unbounded of a program without an end (presolve %s)', async (presolve) => {
    const model = startModel();
    model.column({ cost: -1, lower: 0, upper: Number.POSITIVE_INFINITY, integer: true });
    model.column({ cost: 1, lower: 0, upper: 5, integer: true });
    model.row({
      lower: 0,
      upper: Number.POSITIVE_INFINITY,
      entries: [
        [0, 1],
        [1, -1],
      ],
    });
    expect((await solveMilp(model.build(), { presolve, seconds: 5 })).kind).toBe('unbounded');
  });

  it('answers a program without columns by its rows alone', async () => {
    const empty = startModel();
    expect(await solveMilp(empty.build(), { presolve: 'off', seconds: 5 })).toMatchObject({
      kind: 'solved',
      objective: 0,
    });
    empty.row({ lower: 1, upper: 2, entries: [] });
    expect((await solveMilp(empty.build(), { presolve: 'off', seconds: 5 })).kind).toBe('infeasible');
  });

  it('gives an answer with whole and broken columns that a hand can check', async () => {
    // Minimise 5a + b with a + b ≥ 2.5, b ≤ 0.75, a whole: a = 2, b = 0.5.
    const model = startModel();
    model.column({ cost: 5, lower: 0, upper: 9, integer: true });
    model.column({ cost: 1, lower: 0, upper: 0.75, integer: false });
    model.row({
      lower: 2.5,
      upper: Number.POSITIVE_INFINITY,
      entries: [
        [0, 1],
        [1, 1],
      ],
    });
    const answer = await solveMilp(model.build(), { presolve: 'off', seconds: 5 });
    if (answer.kind !== 'solved') throw new Error('not solved');
    expect(answer.values[0]).toBe(2);
    // The solver may miss a row by its tolerance of a millionth.
    expect(answer.values[1]).toBeCloseTo(0.5, 5);
    expect(answer.objective).toBeCloseTo(10.5, 5);
  });

  it('keeps a start when nothing better is found before it has to stop, and says why it stopped', async () => {
    const model = coveringProgram();
    const start = new Float64Array(model.columns).fill(1);
    const answer = await solveMilp(model, { presolve: 'off', seconds: 20, start, interrupt: () => true });
    expect(answer).toMatchObject({ kind: 'solved', stop: 'interrupted' });
    if (answer.kind !== 'solved') return;
    expect(answer.bound).toBeLessThanOrEqual(answer.objective);
    expect(answer.gap).toBeGreaterThan(0);
  });

  it('stops when its nodes or its time are used up, with a bound below the best known', async () => {
    const start = new Float64Array(coveringProgram().columns).fill(1);
    const byNodes = await solveMilp(coveringProgram(), { presolve: 'off', seconds: 60, nodes: 3, start });
    expect(byNodes).toMatchObject({ kind: 'solved', stop: 'nodes used up' });
    const byTime = await solveMilp(coveringProgram(), { presolve: 'off', seconds: 0.02, start });
    expect(byTime).toMatchObject({ stop: 'time used up' });
  });

  it('refuses a program beyond the column limit with a sentence, and works on', async () => {
    const columns = COLUMN_LIMIT + 1;
    const zeros = () => new Float64Array(columns);
    const large: SparseModel = {
      columns,
      rows: 0,
      cost: zeros(),
      columnLower: zeros(),
      columnUpper: zeros(),
      integer: new Uint8Array(columns),
      rowLower: new Float64Array(0),
      rowUpper: new Float64Array(0),
      rowStart: Int32Array.of(0),
      entryColumn: new Int32Array(0),
      entryValue: new Float64Array(0),
    };
    const answer = await solveMilp(large, { presolve: 'off', seconds: 5 });
    expect(answer.kind === 'failed' ? answer.reason.sentence : '').toMatch(/250001 columns; the limit is 250000/);
    expect((await solveMilp(randomProgram(1), { presolve: 'off', seconds: 5 })).kind).not.toBe('failed');
  });

  it('takes the same effort for the same program', async () => {
    const first = await solveMilp(wrongOptimumModel(), { presolve: 'off', seconds: 20 });
    const second = await solveMilp(wrongOptimumModel(), { presolve: 'off', seconds: 20 });
    if (first.kind !== 'solved' || second.kind !== 'solved') throw new Error('not solved');
    expect(second.effort).toEqual(first.effort);
    expect(second.values).toEqual(first.values);
  });
});
