import { describe, expect, it } from 'vitest';
import { findShortage } from '#lib/fleet/find-shortage.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import { seconds } from '#lib/units/quantity.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import { drive, lineClass, smallFleet, way } from '#tests/support/plans/small-fleet.ts';

async function shortageOf(problem: FleetProblem) {
  const plan = await checkedPlan(problem);
  return { plan, shortage: await findShortage({ problem, plan }) };
}

function withFree(free: Readonly<Record<string, number>>): FleetProblem['items'] {
  return smallFleet().items.map((item) => ({ ...item, free: free[item.id] ?? item.free }));
}

describe('findShortage', () => {
  it('finds nothing short where stock suffices', async () => {
    const { shortage } = await shortageOf(smallFleet());
    expect(shortage).toEqual({ valvesMore: 0, saved_minor: 0, short: [], beyondStock: 0 });
  });

  it('tells the piece that is missing, how many are wanted and free, and how many valves more it would serve', async () => {
    const { plan, shortage } = await shortageOf(smallFleet({ items: withFree({ heavy: 0, swift: 0 }) }));
    expect(plan).toMatchObject({ served: 20, asked: 24 });
    expect(shortage).toEqual({
      valvesMore: 4,
      saved_minor: 0,
      short: [{ item: 'heavy', wanted: 1, free: 0 }],
      beyondStock: 0,
    });
  });

  it('tells what would be saved where no valve is lost', async () => {
    const { plan, shortage } = await shortageOf(smallFleet({ items: withFree({ light: 0 }) }));
    expect(plan.served).toBe(24);
    expect(shortage).toMatchObject({ valvesMore: 0, short: [{ item: 'light', wanted: 1, free: 0 }] });
    // Heavy alone 5000 + 9600 against light with heavy 6000 + 7600: the same job costs 1000 less.
    expect(shortage.saved_minor).toBeCloseTo(1000, 6);
  });

  it('wants one for each crew that has to work at the same time', async () => {
    const problem = smallFleet({
      crews: 3,
      secondsPerCrew: seconds(2000),
      items: [drive('light', { cost: 1000, free: 1 })],
      classes: [lineClass('easy', { qty: 15, ways: [way('light', { time: 300 })] })],
    });
    const { plan, shortage } = await shortageOf(problem);
    expect(plan.served).toBe(5);
    expect(shortage).toEqual({
      valvesMore: 10,
      saved_minor: 0,
      short: [{ item: 'light', wanted: 3, free: 1 }],
      beyondStock: 0,
    });
  });

  it('keeps apart the valves that no stock would help: nothing does them, or the hours do not reach', async () => {
    const nothing = lineClass('nothing', { qty: 3, ways: [] });
    const slow = lineClass('slow', { qty: 2, ways: [way('heavy', { time: 50_000 })] });
    const problem = smallFleet({
      items: withFree({ heavy: 0, swift: 0 }),
      classes: [...smallFleet().classes, nothing, slow],
    });
    const { plan, shortage } = await shortageOf(problem);
    expect(plan.asked).toBe(29);
    expect(shortage).toMatchObject({ valvesMore: 4, beyondStock: 5 });
    expect(plan.served + shortage.valvesMore + shortage.beyondStock).toBe(plan.asked);
  });

  it('counts the pieces of every role that one valve needs together', async () => {
    const base = lineClass('two roles', { qty: 2, ways: [way('clamp', { time: 100, count: 2 })] });
    const classes = base && [
      { ...base, families: base.families.map((one) => ({ ...one, slots: [[way('clamp', { time: 0, count: 1 })]] })) },
    ];
    const { plan, shortage } = await shortageOf(
      smallFleet({ classes, items: [drive('clamp', { cost: 10, free: 2 })] }),
    );
    expect(plan.served).toBe(0);
    expect(shortage).toMatchObject({ valvesMore: 2, short: [{ item: 'clamp', wanted: 3, free: 2 }] });
  });
});
