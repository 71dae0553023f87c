import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveMilp } from '#lib/milp/solve.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import {
  asFleetProblem,
  asProgram,
  MINOR_PER_COST,
  readOrLibrary,
  type WarehouseLocation,
} from '#tests/support/plans/warehouse-location.ts';

const REFERENCE = process.env.KITWRIGHT_REFERENCE ?? new URL('../../../shared/reference', import.meta.url).pathname;

function instance(name: string): WarehouseLocation {
  return readOrLibrary(readFileSync(`${REFERENCE}/or-library/${name}.txt`, 'utf8'));
}

/** Instances and optima: OR-Library (J. E. Beasley), uncapacitated warehouse location, printed to three decimals. */
describe('the planner itself, an item being a warehouse and a line a customer', () => {
  it.each([
    ['cap71', 932_615.75],
    ['cap62', 977_799.4],
    ['cap63', 1_010_641.45],
  ])('reaches the published optimum of %s without capacities, proven', async (name, optimum) => {
    const problem = asFleetProblem(instance(name));
    const plan = await checkedPlan(problem);
    expect(plan.served).toBe(50);
    expect(plan.cost_minor / MINOR_PER_COST).toBeCloseTo(optimum, 2);
    expect(plan.bound / MINOR_PER_COST).toBeCloseTo(optimum, 2);
    expect(plan.proof).toBe('proven');
  });
});

/** The same source, capacitated: demand may be split over warehouses. */
describe('integer programs', () => {
  it.each([
    ['cap62', 977_799.4],
    ['cap63', 1_014_062.05],
  ])('reach the published optimum of %s with capacities', async (name, optimum) => {
    const answer = await solveMilp(asProgram(instance(name), 'split'), { presolve: 'off', seconds: 60 });
    expect(answer).toMatchObject({ kind: 'solved', stop: 'gap reached' });
    expect(answer.kind === 'solved' ? answer.objective : Number.NaN).toBeCloseTo(optimum, 2);
  });
});
