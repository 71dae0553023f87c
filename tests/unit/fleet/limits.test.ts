import { describe, expect, it } from 'vitest';
import { checkPlan } from '#lib/checking/check-plan.ts';
import type { FleetPlan } from '#lib/equipment/choices.ts';
import type { FleetProblem, FleetProgress } from '#lib/fleet/fleet-problem.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import { plausibleCase } from '#tests/support/plans/fleet-cases.ts';

/** Takes some hundreds of nodes to prove, so that every limit can be met on the way. */
const CASE = plausibleCase({ seed: 5, classes: 20, items: 40, crews: 2, most: 20, load: 1.3 });
const PROBLEM: FleetProblem = { ...CASE, preference: 'cost', budget: { seconds: 120, nodes: 5000 } };
/** Proven by the run without limits, in the first test. */
const LEAST_COST = 469_084.7222;

function expectHonest(plan: FleetPlan): void {
  expect(checkPlan({ ...PROBLEM, plan })).toEqual([]);
  expect(plan.served).toBe(197);
  expect(plan.objective).toBeGreaterThanOrEqual(LEAST_COST - 0.01);
  expect(plan.bound).toBeLessThanOrEqual(LEAST_COST + 0.01);
  expect(plan.gap).toBeCloseTo((plan.objective - plan.bound) / plan.objective, 9);
}

describe('a plan whose search was cut short', () => {
  it('is proven when nothing cuts it short', async () => {
    const plan = await checkedPlan(PROBLEM);
    expect(plan.proof).toBe('proven');
    expect(plan.objective).toBeCloseTo(LEAST_COST, 3);
    expectHonest(plan);
  }, 60_000);

  it('says bounded when its nodes are used up, with a bound that the least cost does not undercut', async () => {
    const plan = await checkedPlan({ ...PROBLEM, budget: { seconds: 120, nodes: 10 } });
    expect(plan.proof).toBe('bounded');
    expect(plan.gap).toBeGreaterThan(1e-6);
    expect(plan.bound).toBeGreaterThan(0.5 * LEAST_COST);
    expectHonest(plan);
  });

  it('never gets a worse plan or bound from more nodes', async () => {
    const plans: FleetPlan[] = [];
    for (const nodes of [1, 5, 50, 150]) plans.push(await checkedPlan({ ...PROBLEM, budget: { seconds: 120, nodes } }));
    for (const [index, plan] of plans.entries()) {
      expectHonest(plan);
      const before = plans[index - 1];
      if (before === undefined) continue;
      expect(plan.objective).toBeLessThanOrEqual(before.objective);
      expect(plan.bound).toBeGreaterThanOrEqual(before.bound - 1e-6);
    }
    expect(plans.at(-1)?.bound).toBeGreaterThan(plans[0]?.bound ?? Number.POSITIVE_INFINITY);
  }, 60_000);

  it('says halted when a person stops it, and keeps the best plan found', async () => {
    let asked = 0;
    const plan = await checkedPlan({
      ...PROBLEM,
      interrupt: () => {
        asked += 1;
        return asked > 20;
      },
    });
    expect(asked).toBeGreaterThan(20);
    expect(plan.proof).toBe('halted');
    expectHonest(plan);
  });

  it('says halted when the clock it was given passes the budget', async () => {
    let time = 1000;
    const plan = await checkedPlan({
      ...PROBLEM,
      now: () => {
        time += 10;
        return time;
      },
    });
    expect(plan.proof).toBe('halted');
    expectHonest(plan);
  });

  it('gives a plan within all limits even with no time at all', async () => {
    const plan = await checkedPlan({ ...PROBLEM, budget: { seconds: 0, nodes: 5000 } });
    expect(plan.proof).toBe('halted');
    expect(plan.bound).toBe(0);
    expectHonest(plan);
  });

  it.each(['pieces', 'time', 'surest'] as const)(
    'keeps to the same rules by %s',
    async (preference) => {
      const cut = await checkedPlan({ ...PROBLEM, preference, budget: { seconds: 120, nodes: 4 } });
      expect(cut.proof).toBe('bounded');
      expect(checkPlan({ ...PROBLEM, plan: cut })).toEqual([]);
      const whole = await checkedPlan({ ...PROBLEM, preference });
      expect(whole.proof).toBe('proven');
      expect(cut.objective).toBeGreaterThanOrEqual(whole.objective - 1e-6);
      expect(cut.bound).toBeLessThanOrEqual(whole.objective + 1e-6);
    },
    60_000,
  );
});

describe('what is told while planning', () => {
  it('closes in on the plan: bests fall, bounds rise, and they never cross', async () => {
    const told: FleetProgress[] = [];
    const plan = await checkedPlan({ ...PROBLEM, onProgress: (progress) => told.push(progress) });
    expect(told.length).toBeGreaterThan(10);
    for (const [index, { best, bound }] of told.entries()) {
      expect(bound).toBeLessThanOrEqual(best + 1e-6);
      const before = told[index - 1];
      if (before === undefined) continue;
      expect(best).toBeLessThanOrEqual(before.best);
      expect(bound).toBeGreaterThanOrEqual(before.bound - 1e-6);
    }
    expect(told.at(-1)?.best).toBeCloseTo(plan.objective, 6);
  }, 60_000);
});
