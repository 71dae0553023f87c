import { describe, expect, it } from 'vitest';
import { checkPlan } from '#lib/checking/check-plan.ts';
import type { FleetPlan, Preference } from '#lib/equipment/choices.ts';
import { seconds } from '#lib/units/quantity.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import { plausibleCase, tinyCase } from '#tests/support/plans/fleet-cases.ts';
import { drive, lineClass, smallFleet, way } from '#tests/support/plans/small-fleet.ts';

const PREFERENCES: readonly Preference[] = ['cost', 'pieces', 'time', 'surest'];

function carried(plan: FleetPlan): readonly (readonly string[])[] {
  return plan.kits.map((kit) => kit.items.map(({ item, count }) => `${count} ${item}`));
}

/** Seconds: 20 easy + 4 hard, each with 100 of moving. light+heavy 20·300 + 4·400 = 7600; heavy 24·400 = 9600; swift 24·200 = 4800. */
describe('planFleet on a problem that can be reckoned on paper', () => {
  it('takes the two cheap drives for least cost', async () => {
    const plan = await checkedPlan(smallFleet());
    expect(carried(plan)).toEqual([['1 light', '1 heavy']]);
    expect(plan.cost_minor).toBeCloseTo(1000 + 5000 + 7600, 9);
    expect(plan).toMatchObject({ served: 24, asked: 24, servedAtMost: 24, proof: 'proven' });
  });

  it('takes one drive for fewest pieces, the cheaper of the two that do it alone', async () => {
    const plan = await checkedPlan(smallFleet({ preference: 'pieces' }));
    expect(carried(plan)).toEqual([['1 heavy']]);
    expect(plan).toMatchObject({ objective: 1, bound: 1, proof: 'proven' });
    expect(plan.cost_minor).toBeCloseTo(5000 + 9600, 9);
    expect(plan.costAtLeast_minor).toBeCloseTo(5000 + 9600, 1);
  });

  it('takes the swift drive for the shortest time', async () => {
    const plan = await checkedPlan(smallFleet({ preference: 'time' }));
    expect(carried(plan)).toEqual([['1 swift']]);
    expect(plan.objective).toBeCloseTo(4800, 9);
  });

  it('takes the swift drive for the surest plan, and counts the second visits that are left', async () => {
    const plan = await checkedPlan(smallFleet({ preference: 'surest' }));
    expect(carried(plan)).toEqual([['1 swift']]);
    expect(plan.objective).toBeCloseTo(0, 9);
    const without = await checkedPlan(
      smallFleet({
        preference: 'surest',
        items: smallFleet().items.map((item) => (item.id === 'swift' ? { ...item, free: 0 } : item)),
      }),
    );
    expect(without.objective).toBeCloseTo(20 * 0.25 + 4 * 0.5, 9);
    expect(carried(without), 'equally sure, so the cheaper way').toEqual([['1 light', '1 heavy']]);
  });

  it('serves more valves before it saves money: short hours bring the swift drive in', async () => {
    const plan = await checkedPlan(smallFleet({ secondsPerCrew: seconds(7000) }));
    expect(plan.served).toBe(24);
    expect(plan.kits[0]?.items.map(({ item }) => item)).toContain('swift');
  });

  it('says how many valves the hours hold, proven, when not all fit', async () => {
    const plan = await checkedPlan(smallFleet({ secondsPerCrew: seconds(1000) }));
    expect(plan).toMatchObject({ served: 5, asked: 24, servedAtMost: 5, proof: 'proven' });
  });

  it('gives each of two crews a kit of its own when one crew has not the hours', async () => {
    const problem = smallFleet({ crews: 2, secondsPerCrew: seconds(4000) });
    const plan = await checkedPlan(problem);
    expect(plan).toMatchObject({ served: 24, proof: 'proven' });
    expect(plan.kits).toHaveLength(2);
    for (const kit of plan.kits) expect(kit.time).toBeLessThanOrEqual(4000);
    expect(checkPlan({ ...problem, plan })).toEqual([]);
  });

  it('carries two of a piece where one valve needs two of it, and none where only one is free', async () => {
    const pair = lineClass('pair', { qty: 3, ways: [way('clamp', { time: 100, count: 2 })] });
    const problem = (free: number) => smallFleet({ classes: [pair], items: [drive('clamp', { cost: 10, free })] });
    expect(carried(await checkedPlan(problem(2)))).toEqual([['2 clamp']]);
    expect(await checkedPlan(problem(1))).toMatchObject({ served: 0, asked: 3, servedAtMost: 0 });
  });

  it('counts valves of a class that nothing does as asked and not served', async () => {
    const nothing = lineClass('nothing', { qty: 7, ways: [] });
    const plan = await checkedPlan(smallFleet({ classes: [...smallFleet().classes, nothing] }));
    expect(plan).toMatchObject({ served: 24, asked: 31, servedAtMost: 24 });
  });

  it('answers a list with no valves with an empty, proven plan', async () => {
    for (const preference of PREFERENCES) {
      const plan = await checkedPlan(smallFleet({ classes: [], preference }));
      expect(plan).toMatchObject({ served: 0, asked: 0, cost_minor: 0, work: [], proof: 'proven' });
    }
  });

  it.each([
    ['no crew', { crews: 0 }, /crew/],
    ['an item listed twice', { items: [...smallFleet().items, ...smallFleet().items] }, /listed once/],
    ['a piece that is not listed', { items: [] }, /needed but not listed/],
  ])('refuses %s as a mistake of the caller', async (_, change, message) => {
    await expect(checkedPlan(smallFleet(change))).rejects.toThrow(message);
  });
});

describe('the four preferences', () => {
  it('are each at least as good as the others in their own measure, and serve equally many', async () => {
    let compared = 0;
    for (let seed = 400; seed < 440; seed += 1) {
      const problem = tinyCase(seed);
      const plans = new Map<Preference, FleetPlan>();
      for (const preference of PREFERENCES) {
        plans.set(preference, await checkedPlan({ ...problem, preference, budget: { seconds: 30, nodes: 5000 } }));
      }
      for (const own of PREFERENCES) {
        const best = measureOf(problem, { plan: plans.get(own), preference: own });
        for (const other of PREFERENCES) {
          expect(plans.get(own)?.served).toBe(plans.get(other)?.served);
          const measure = measureOf(problem, { plan: plans.get(other), preference: own });
          expect(best, `seed ${seed}: ${own} of the ${own} plan and of the ${other} plan`).toBeLessThanOrEqual(
            measure + 1e-6 * Math.max(1, measure),
          );
          compared += 1;
        }
      }
    }
    console.info(`preferences: ${compared} pairs of plans compared`);
    expect(compared).toBe(40 * 16);
  });
});

/** Added up from the plan's own work and kits, not from what the planner says of them. */
function measureOf(
  problem: ReturnType<typeof tinyCase>,
  { plan, preference }: { readonly plan: FleetPlan | undefined; readonly preference: Preference },
): number {
  if (plan === undefined) throw new Error('no plan');
  const item = new Map(problem.items.map((one) => [one.id, one]));
  const pieces = plan.kits.flatMap((kit) => kit.items);
  const uses = plan.work.map((served) => {
    const lineClass = problem.classes.find(({ id }) => id === served.classId);
    const family = lineClass?.families.find(({ id }) => id === served.family);
    const parts = [
      family?.cores.find(({ id }) => id === served.core),
      ...served.slots.map((slot, index) => family?.slots[index]?.find(({ id }) => id === slot)),
    ];
    return parts.reduce(
      (sum, part) => ({
        qty: served.qty,
        time: sum.time + (part?.timePerValve ?? Number.NaN),
        cost: sum.cost + (part?.cost_minor ?? Number.NaN),
        chance: sum.chance * (part?.chance ?? Number.NaN),
      }),
      { qty: served.qty, time: lineClass?.moveTime ?? Number.NaN, cost: 0, chance: 1 },
    );
  });
  const time = uses.reduce((sum, use) => sum + use.qty * use.time, 0);
  switch (preference) {
    case 'time':
      return time;
    case 'pieces':
      return pieces.reduce((sum, need) => sum + need.count * (item.get(need.item)?.pieces ?? Number.NaN), 0);
    case 'surest':
      return uses.reduce((sum, use) => sum + use.qty * (1 - use.chance), 0);
    case 'cost':
      return (
        pieces.reduce((sum, need) => sum + need.count * (item.get(need.item)?.cost_minor ?? Number.NaN), 0) +
        uses.reduce((sum, use) => sum + use.qty * use.cost, 0) +
        (time * problem.labour_minor_per_hour) / 3600
      );
  }
}

/** Counted, so equal on every machine; a change here is a change of the search and needs its reason in the commit. */
const EFFORT: Readonly<Record<Preference, Readonly<Record<string, number>>>> = {
  cost: {
    columns: 624,
    'crew rows': 1,
    'items ruled out': 8,
    nodes: 5,
    'relaxation iterations': 13,
    'search visits': 256_102,
    'simplex iterations': 788,
  },
  pieces: {
    columns: 1248,
    'crew rows': 1,
    'items ruled out': 7,
    nodes: 10,
    'relaxation iterations': 31,
    'search visits': 268_585,
    'simplex iterations': 1075,
  },
  time: {
    columns: 828,
    'crew rows': 1,
    'items ruled out': 0,
    nodes: 11,
    'relaxation iterations': 114,
    'search visits': 232_264,
    'simplex iterations': 560,
  },
  surest: {
    columns: 1248,
    'crew rows': 1,
    'items ruled out': 8,
    nodes: 5,
    'relaxation iterations': 98,
    'search visits': 236_040,
    'simplex iterations': 788,
  },
};

describe('the effort of a plan', () => {
  const problem = plausibleCase({ seed: 5, classes: 20, items: 40, crews: 2, most: 20, load: 0.7 });
  const request = { ...problem, budget: { seconds: 120, nodes: 5000 } };

  it.each(PREFERENCES)(
    'is counted, and the same request gives the same plan with the same counters (%s)',
    async (preference) => {
      const first = await checkedPlan({ ...request, preference });
      const second = await checkedPlan({ ...request, preference });
      expect(first.proof).toBe('proven');
      expect(second).toEqual(first);
      expect(first.effort).toEqual(EFFORT[preference]);
    },
    60_000,
  );
});
