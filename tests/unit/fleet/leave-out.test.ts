import { describe, expect, it } from 'vitest';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import { checkedLeaveOut, checkedPlan } from '#tests/support/checked.ts';
import { plausibleCase } from '#tests/support/plans/fleet-cases.ts';
import { smallFleet } from '#tests/support/plans/small-fleet.ts';

async function without(problem: FleetProblem, item: string) {
  const plan = await checkedPlan(problem);
  return { plan, left: await checkedLeaveOut({ problem, plan, item }) };
}

describe('leaveOut', () => {
  it('tells what the plan costs more without a drive that another stands in for', async () => {
    const { left } = await without(smallFleet(), 'light');
    expect(left).toMatchObject({ item: 'light', valvesLost: 0, isExact: true });
    expect(left.extraCost_minor).toBeCloseTo(1000, 6);
    expect(left.extraObjective).toBeCloseTo(1000, 6);
    expect(left.plan.kits.flatMap((kit) => kit.items.map(({ item }) => item))).toEqual(['heavy']);
  });

  it('tells the valves that are lost when nothing stands in', async () => {
    const items = smallFleet().items.filter(({ id }) => id !== 'swift');
    const classes = smallFleet().classes.map((one) => ({
      ...one,
      families: one.families.map((family) => ({ ...family, cores: family.cores.filter(({ id }) => id !== 'swift') })),
    }));
    const { left } = await without(smallFleet({ items, classes }), 'heavy');
    expect(left).toMatchObject({ valvesLost: 4, isExact: true });
    expect(left.extraCost_minor, 'the heavy drive and four valves of its time are saved').toBeCloseTo(-6600, 6);
  });

  it('costs nothing for a model that the plan does not carry', async () => {
    const { plan, left } = await without(smallFleet(), 'swift');
    expect(left).toMatchObject({ valvesLost: 0, isExact: true });
    expect(left.extraCost_minor).toBeCloseTo(0, 6);
    expect(left.plan.kits).toEqual(plan.kits);
  });

  it('measures by the preference of the plan: seconds where time is preferred', async () => {
    const { left } = await without(smallFleet({ preference: 'time' }), 'swift');
    expect(left.valvesLost).toBe(0);
    expect(left.extraObjective).toBeCloseTo(7600 - 4800, 6);
  });

  it('does not call a difference exact when a plan was cut short', async () => {
    const problem: FleetProblem = {
      ...plausibleCase({ seed: 5, classes: 20, items: 40, crews: 2, most: 20, load: 1.3 }),
      preference: 'cost',
      budget: { seconds: 120, nodes: 5 },
    };
    const { plan, left } = await without(problem, problem.items[0]?.id ?? '');
    expect(plan.proof).toBe('bounded');
    expect(left.isExact).toBe(false);
  });

  it('refuses a model that is not part of the problem as a mistake of the caller', async () => {
    await expect(without(smallFleet(), 'unheard-of')).rejects.toThrow(/not part of the problem/);
  });
});
