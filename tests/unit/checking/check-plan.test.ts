import { describe, expect, it } from 'vitest';
import { checkPlan } from '#lib/checking/check-plan.ts';
import type { PlanFacts } from '#lib/checking/plan-facts.ts';
import type { Alternative, FleetPlan, LineClass } from '#lib/equipment/choices.ts';
import { toMinor } from '#lib/money/money.ts';
import { kilograms, seconds } from '#lib/units/quantity.ts';
import { codesOf } from '#tests/support/discrepancy-codes.ts';
import { mutationsOf } from '#tests/support/mutate.ts';

const alternative = (
  id: string,
  needs: readonly [string, number][],
  figures: { time: number; cost?: number; chance?: number },
): Alternative => ({
  id,
  needs: needs.map(([item, count]) => ({ item, count })),
  timePerValve: seconds(figures.time),
  cost_minor: figures.cost ?? 0,
  chance: figures.chance ?? 1,
});

const classes: readonly LineClass[] = [
  {
    id: 'gates',
    tags: ['V-1', 'V-2'],
    qty: 5,
    moveTime: seconds(600),
    families: [
      {
        id: 'by wheel',
        cores: [
          alternative('light', [['drive-light', 1]], { time: 300, chance: 0.9 }),
          alternative('heavy', [['drive-heavy', 1]], { time: 200 }),
        ],
        slots: [
          [
            alternative(
              'pegs',
              [
                ['plate', 1],
                ['peg', 4],
              ],
              { time: 120, cost: 15, chance: 0.8 },
            ),
            alternative('driver', [['driver', 1]], { time: 60 }),
          ],
          [
            alternative(
              'chain',
              [
                ['arm', 1],
                ['peg', 2],
              ],
              { time: 90 },
            ),
          ],
        ],
      },
    ],
  },
  {
    id: 'hydrants',
    tags: ['H-1'],
    qty: 3,
    moveTime: seconds(300),
    families: [
      {
        id: 'by nut',
        cores: [
          alternative(
            'key',
            [
              ['drive-light', 1],
              ['key', 1],
            ],
            { time: 150 },
          ),
        ],
        slots: [],
      },
    ],
  },
];

const item = (id: string, figures: { cost: number; free: number; pieces?: number }) => ({
  id,
  cost_minor: toMinor(figures.cost),
  mass: kilograms(4),
  pieces: figures.pieces ?? 1,
  free: figures.free,
});

const items = [
  item('drive-light', { cost: 4000, free: 2 }),
  item('drive-heavy', { cost: 9000, free: 1 }),
  item('plate', { cost: 500, free: 1 }),
  item('peg', { cost: 10, free: 12, pieces: 0 }),
  item('driver', { cost: 900, free: 1 }),
  item('arm', { cost: 700, free: 2 }),
  item('key', { cost: 300, free: 1 }),
];

/** Crew 0 does three gates with pegs and two with the driver; crew 1 does two hydrants; one hydrant is left. By hand: */
const plan: FleetPlan = {
  preference: 'cost',
  served: 7,
  asked: 8,
  servedAtMost: 7,
  kits: [
    {
      crew: 0,
      items: [
        { item: 'drive-light', count: 1 },
        { item: 'plate', count: 1 },
        { item: 'peg', count: 6 },
        { item: 'arm', count: 1 },
        { item: 'driver', count: 1 },
      ],
      // 3 × (600 + 300 + 120 + 90) + 2 × (600 + 300 + 60 + 90)
      time: seconds(5430),
    },
    {
      crew: 1,
      items: [
        { item: 'drive-light', count: 1 },
        { item: 'key', count: 1 },
      ],
      time: seconds(900),
    },
  ],
  work: [
    { classId: 'gates', crew: 0, qty: 3, family: 'by wheel', core: 'light', slots: ['pegs', 'chain'] },
    { classId: 'gates', crew: 0, qty: 2, family: 'by wheel', core: 'light', slots: ['driver', 'chain'] },
    { classId: 'hydrants', crew: 1, qty: 2, family: 'by nut', core: 'key', slots: [] },
  ],
  // Pieces 4000 + 500 + 60 + 700 + 900 + 4000 + 300 = 10 460; pegs worn 3 × 15 = 45; 6330 s at 36 an hour-hundredth: 63.3 × 100.
  cost_minor: 10_460 + 45 + 6330,
  objective: 10_460 + 45 + 6330,
  bound: 16_000,
  gap: 835 / 16_835,
  costAtLeast_minor: 15_000,
  proof: 'bounded',
  effort: {},
};

const facts: PlanFacts = { classes, items, crews: 2, secondsPerCrew: 5500, labour_minor_per_hour: 3600, plan };
const wrongIn = (change: Partial<PlanFacts> & { readonly planned?: Partial<FleetPlan> }) => {
  const { planned, ...rest } = change;
  return [...new Set(checkPlan({ ...facts, ...rest, plan: { ...plan, ...planned } }).map((one) => one.code))];
};

const VIOLATIONS: readonly (readonly [string, Parameters<typeof wrongIn>[0]])[] = [
  ['plan-asked', { planned: { asked: 9 } }],
  ['plan-served', { planned: { served: 8 } }],
  ['plan-crew-time', { planned: { kits: plan.kits.map((kit) => ({ ...kit, time: seconds(1) })) } }],
  ['plan-objective', { planned: { objective: 17_000 } }],
  [
    'plan-work-unfounded',
    {
      planned: {
        work: [...plan.work, { classId: 'gates', crew: 0, qty: 1, family: 'by nut', core: 'key', slots: [] }],
      },
    },
  ],
  ['plan-class-overserved', { classes: classes.map((one) => ({ ...one, qty: one.id === 'gates' ? 4 : 4 })) }],
  ['plan-stock-exceeded', { items: items.map((one) => (one.id === 'drive-light' ? { ...one, free: 1 } : one)) }],
  ['plan-crew-overtime', { secondsPerCrew: 5429 }],
  ['plan-crew-unknown', { crews: 1 }],
  ['plan-item-unknown', { items: items.filter((one) => one.id !== 'key') }],
  ['plan-cost', { labour_minor_per_hour: 3601 }],
  ['plan-proof', { planned: { proof: 'proven' } }],
  ['plan-bound', { planned: { bound: 17_000, gap: (16_835 - 17_000) / 16_835 } }],
  ['plan-gap', { planned: { gap: 0 } }],
  ['plan-served-at-most', { planned: { servedAtMost: 6 } }],
  ['plan-cost-at-least', { planned: { costAtLeast_minor: 17_000 } }],
  ['plan-crew-twice', { planned: { kits: [...plan.kits, { crew: 1, items: [], time: seconds(900) }] } }],
];

describe('checking a plan', () => {
  it('finds nothing wrong with a sound plan', () => expect(checkPlan(facts)).toEqual([]));

  it('finds the measures of every preference sound', () => {
    const measures = { pieces: 6, time: 6330, surest: 3 * (1 - 0.9 * 0.8) + 2 * (1 - 0.9) } as const;
    for (const preference of ['pieces', 'time', 'surest'] as const) {
      const objective = measures[preference];
      expect(wrongIn({ planned: { preference, objective, bound: objective, gap: 0, proof: 'proven' } })).toEqual([]);
      expect(wrongIn({ planned: { preference, objective: objective + 1, bound: objective + 1, gap: 0 } })).toEqual([
        'plan-objective',
      ]);
    }
  });

  it.each(VIOLATIONS)('says %s', (code, change) => expect(wrongIn(change)).toContain(code));

  it('names a needed piece that a kit lacks, and one that nothing needs', () => {
    const [first, ...others] = plan.kits;
    if (first === undefined) throw new Error('the plan has kits');
    const without = { ...first, items: first.items.filter((need) => need.item !== 'arm') };
    const withMore = { ...first, items: [...first.items, { item: 'key', count: 1 }] };
    expect(wrongIn({ planned: { kits: [without, ...others] } })).toContain('plan-kit-lacks');
    expect(wrongIn({ planned: { kits: [withMore, ...others] } })).toContain('plan-kit-surplus');
  });

  it('has a violation for every kind of discrepancy that its sources can tell', () => {
    const provoked = new Set([...VIOLATIONS.map(([code]) => code), 'plan-kit-lacks', 'plan-kit-surplus']);
    expect([...provoked].toSorted()).toEqual(codesOf('plan'));
  });

  it('notices every single change of a number, a name or an entry', () => {
    // What bounds only from one side may move away from it: a lower bound goes down, an upper one stays below what was asked.
    const free = new Set([
      'costAtLeast_minor down',
      'costAtLeast_minor up',
      'servedAtMost up',
      'preference another word',
      'proof another word',
    ]);
    const mutations = mutationsOf(plan).filter((one) => !free.has(`${one.at} ${one.how}`));
    const missed = mutations.filter((one) => checkPlan({ ...facts, plan: one.value }).length === 0);
    console.info(`plan mutations: ${mutations.length} made, ${mutations.length - missed.length} noticed`);
    expect(mutations.length).toBeGreaterThan(60);
    expect(missed.map((one) => `${one.at} ${one.how}`)).toEqual([]);
  });
});
