import { describe, expect, it } from 'vitest';
import { solveMilp } from '#lib/milp/solve.ts';
import { asProgram, type WarehouseLocation } from '#tests/support/plans/warehouse-location.ts';

/** CSPLib problem 034, warehouse location: five warehouses, ten stores, each store from one warehouse; optimum 383. */
const CAPACITIES = [1, 4, 2, 1, 3];
const FIXED = 30;
const COSTS = [
  [20, 24, 11, 25, 30],
  [28, 27, 82, 83, 74],
  [74, 97, 71, 96, 70],
  [2, 55, 73, 69, 61],
  [46, 96, 59, 83, 4],
  [42, 22, 29, 67, 59],
  [1, 5, 73, 59, 56],
  [10, 73, 13, 43, 96],
  [93, 35, 63, 85, 46],
  [47, 65, 55, 71, 95],
];

describe('CSPLib problem 034', () => {
  it('has its published optimum of 383, by the solver with and without presolve', async () => {
    const problem: WarehouseLocation = {
      warehouses: CAPACITIES.map((capacity) => ({ capacity, fixed: FIXED })),
      customers: COSTS.map((costs) => ({ demand: 1, costs })),
    };
    for (const presolve of ['on', 'off'] as const) {
      const answer = await solveMilp(asProgram(problem, 'single source'), { presolve, seconds: 30 });
      expect(answer.kind === 'solved' ? answer.objective : Number.NaN, presolve).toBeCloseTo(383, 6);
    }
  });
});
