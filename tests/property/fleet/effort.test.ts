import { describe, expect, it } from 'vitest';
import type { FleetPlan, Preference } from '#lib/equipment/choices.ts';
import { checkedPlan } from '#tests/support/checked.ts';
import { plausibleCase } from '#tests/support/plans/fleet-cases.ts';

/** Nodes alone stop a search here, so that the counters are equal on every machine. */
const BUDGET = { seconds: 3600, nodes: 60 };
const SEED = 5;

interface Size {
  readonly classes: number;
  readonly items: number;
  readonly crews: number;
  readonly load: number;
}

const SIZES: readonly Size[] = [
  { classes: 10, items: 30, crews: 1, load: 0.5 },
  { classes: 10, items: 30, crews: 2, load: 0.6 },
  { classes: 20, items: 40, crews: 2, load: 0.7 },
  { classes: 60, items: 60, crews: 1, load: 0.6 },
  { classes: 60, items: 60, crews: 2, load: 0.6 },
  { classes: 60, items: 200, crews: 1, load: 0.6 },
];
const PREFERENCES: readonly Preference[] = ['cost', 'pieces', 'time', 'surest'];

/** A change here is a change of the search and needs its reason in the commit. */
const BY_SIZE: Readonly<Record<string, FleetPlan['effort']>> = {
  '10 classes × 30 models × 1 crews': { columns: 128, 'relaxation iterations': 71, 'search visits': 11_534 },
  '10 classes × 30 models × 2 crews': { columns: 264, 'relaxation iterations': 163, 'search visits': 36_932 },
  '20 classes × 40 models × 2 crews': {
    columns: 624,
    'crew rows': 1,
    'items ruled out': 8,
    nodes: 5,
    'relaxation iterations': 13,
    'search visits': 256_102,
    'simplex iterations': 788,
  },
  '60 classes × 60 models × 1 crews': { columns: 1887, 'relaxation iterations': 602, 'search visits': 30_017 },
  '60 classes × 60 models × 2 crews': { columns: 4932, 'relaxation iterations': 1502, 'search visits': 60_334 },
  '60 classes × 200 models × 1 crews': { columns: 4031, 'relaxation iterations': 1086, 'search visits': 30_132 },
};
const BY_PREFERENCE: Readonly<Record<Preference, FleetPlan['effort']>> = {
  cost: {
    columns: 624,
    'crew rows': 2,
    'items ruled out': 1,
    nodes: 60,
    'relaxation iterations': 1,
    'search visits': 261_649,
    'simplex iterations': 8051,
  },
  pieces: {
    columns: 1248,
    'crew rows': 4,
    'items ruled out': 1,
    nodes: 60,
    'relaxation iterations': 121,
    'search visits': 513_782,
    'simplex iterations': 10_519,
  },
  time: {
    columns: 828,
    'crew rows': 2,
    'items ruled out': 0,
    nodes: 11,
    'relaxation iterations': 121,
    'search visits': 243_574,
    'simplex iterations': 495,
  },
  surest: {
    columns: 1248,
    'crew rows': 2,
    'items ruled out': 1,
    nodes: 60,
    'relaxation iterations': 153,
    'search visits': 243_997,
    'simplex iterations': 8051,
  },
};

/** The time holds the independent check too, which is a small part of it. */
async function timed(size: Size, preference: Preference) {
  const problem = plausibleCase({ seed: SEED, most: 20, ...size });
  const started = performance.now();
  const plan = await checkedPlan({ ...problem, preference, budget: BUDGET });
  const milliseconds = performance.now() - started;
  return { plan, milliseconds };
}

function told(plan: FleetPlan): string {
  return `${plan.served} of ${plan.asked} valves, ${plan.proof}, gap ${plan.gap.toExponential(1)}`;
}

describe('effort of planning', () => {
  it('stays as it is from ten classes to sixty, by cost', async () => {
    const smallest = { classes: 10, items: 30, crews: 1, load: 0.5 };
    await timed(smallest, 'cost');
    const first = await timed(smallest, 'cost');
    const efforts: Record<string, FleetPlan['effort']> = {};
    for (const size of SIZES) {
      const { plan, milliseconds } = await timed(size, 'cost');
      const name = `${size.classes} classes × ${size.items} models × ${size.crews} crews`;
      efforts[name] = plan.effort;
      console.info(`${name}: ${(milliseconds / first.milliseconds).toFixed(1)} × the first, ${told(plan)}`);
    }
    expect(efforts).toEqual(BY_SIZE);
  });

  it('stays as it is by every preference', async () => {
    const size = { classes: 20, items: 40, crews: 2, load: 1.3 };
    await timed(size, 'cost');
    const first = await timed(size, 'cost');
    const efforts: Record<string, FleetPlan['effort']> = {};
    for (const preference of PREFERENCES) {
      const { plan, milliseconds } = await timed(size, preference);
      efforts[preference] = plan.effort;
      console.info(`by ${preference}: ${(milliseconds / first.milliseconds).toFixed(1)} × cost, ${told(plan)}`);
    }
    expect(efforts).toEqual(BY_PREFERENCE);
  });
});
