import type { Model, ModelData } from 'highs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { infoNumber, withSolver } from '#lib/milp/highs-runtime.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import { plausibleCase } from '#tests/support/plans/fleet-cases.ts';

const abortAt = { call: Number.POSITIVE_INFINITY, calls: 0, loads: 0 };

/** The real solver; the call that is named is made to abort inside the WebAssembly code, by an option it cannot bear. */
vi.mock('highs', async (original) => {
  const real = await original<typeof import('highs')>();
  return {
    ...real,
    default: async (...options: Parameters<typeof real.default>) => {
      abortAt.loads += 1;
      const highs = await real.default(...options);
      const withModel = (source: ModelData, work: (solver: Model) => unknown): unknown => {
        abortAt.calls += 1;
        const isDue = abortAt.calls === abortAt.call;
        return highs.withModel(source, (solver) => {
          if (isDue) solver.options.set({ threads: 4 });
          return work(solver);
        });
      };
      return Object.assign(Object.create(highs), { withModel });
    },
  };
});

const CASE = plausibleCase({ seed: 5, classes: 6, items: 12, crews: 2, most: 8, load: 1.2 });
const PROBLEM = { ...CASE, preference: 'cost', budget: { seconds: 60, nodes: 2_000 } } as const;

/** Least −x with x ≤ 3. */
const MODEL = {
  columns: 1,
  rows: 0,
  cost: Float64Array.of(-1),
  columnLower: Float64Array.of(0),
  columnUpper: Float64Array.of(3),
  rowLower: new Float64Array(),
  rowUpper: new Float64Array(),
  rowStart: Int32Array.of(0),
  entryColumn: new Int32Array(),
  entryValue: new Float64Array(),
  integer: Uint8Array.of(0),
};

async function leastOf() {
  return withSolver({
    model: MODEL,
    relax: 'integers dropped',
    options: {},
    work: (solver) => {
      solver.run();
      return infoNumber(solver, 'objective_function_value');
    },
  });
}

describe('an abort inside the WebAssembly solver', () => {
  afterEach(() => {
    abortAt.call = Number.POSITIVE_INFINITY;
  });

  it('is an answer with a reason, and the next call runs in a fresh runtime', async () => {
    await leastOf();
    const { loads } = abortAt;
    abortAt.call = abortAt.calls + 1;
    const stopped = await leastOf();
    expect(stopped.ok ? 'no abort' : stopped.reason.code).toBe('solver-stopped');
    const next = await leastOf();
    expect(next).toEqual({ ok: true, value: -3 });
    expect(abortAt.loads).toBe(loads + 1);
  });

  it('in the middle of planning leaves a plan that stands up to the check and claims no more than it proved', async () => {
    const whole = await checkedPlan(PROBLEM);
    const before = abortAt.calls;
    const calls = await callsOf(() => checkedPlan(PROBLEM));
    expect(calls).toBeGreaterThan(1);
    let stopped = 0;
    for (const at of new Set([1, 2, Math.ceil(calls / 2), calls])) {
      abortAt.call = abortAt.calls + at;
      const plan = await checkedPlan(PROBLEM);
      expect(plan.served).toBeGreaterThan(0);
      expect(plan.servedAtMost).toBeGreaterThanOrEqual(whole.served);
      if (plan.served === whole.served) {
        expect(plan.objective).toBeGreaterThanOrEqual(whole.objective - 1e-6);
        expect(plan.bound).toBeLessThanOrEqual(whole.objective + 1e-6);
      }
      if (plan.proof === 'proven') expect(plan.served).toBe(whole.served);
      if (plan.proof === 'proven') expect(plan.objective).toBeCloseTo(whole.objective, 3);
      stopped += 1;
    }
    console.info(`aborts: ${stopped} plans through an abort, of ${abortAt.calls - before} solver calls in all`);
    expect(stopped).toBeGreaterThan(1);
  }, 90_000);
});

async function callsOf(run: () => Promise<unknown>): Promise<number> {
  const before = abortAt.calls;
  await run();
  return abortAt.calls - before;
}
