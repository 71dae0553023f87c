import type { OutcomeFacts } from '#lib/checking/outcome-facts.ts';
import type { CrewDaysInput } from '#lib/documents/papers/paper-inputs.ts';
import type { Assembly, AssemblyParts } from '#lib/equipment/assembly.ts';
import type { Alternative, FleetPlan, ItemNeed } from '#lib/equipment/choices.ts';
import type { AccessoryModel, Model } from '#lib/equipment/model.ts';
import type { AccessoryFacts } from '#lib/equipment/parts.ts';
import { sampleBase } from '#lib/equipment/sample-model.ts';
import { crewDays } from '#lib/planning/crew-days.ts';
import { sampleDuty, sampleLine, sampleSite, stated } from '#lib/rules/sample-facts.ts';
import { joules, kilograms, seconds } from '#lib/units/quantity.ts';
import { SHELF, wheelAssembly } from '../kits/sample-assemblies.ts';

export function accessory(
  number: string,
  kind: AccessoryFacts['kind'],
  facts: Partial<AccessoryFacts> = {},
): AccessoryModel {
  const base = { ...sampleBase(number, `sample ${kind}`), mass: kilograms(1) };
  return { ...base, role: 'accessory', facts: { kind, fits: [], saleItem: false, ...facts } };
}

/** Everything of the shelf weighs 6 kg or, the second adapter, 7; pegs are counted, not numbered. */
export const OUTCOME_MODELS: readonly Model[] = [
  ...SHELF.map((model) => (model.number === 'SP-8' ? { ...model, counted: true } : model)),
  accessory('SP-1', 'spare pack'),
  accessory('SN-1', 'lanyards'),
];

const needs = (text: string): readonly ItemNeed[] =>
  text.split(' ').map((need) => {
    const [item = '', count = '1'] = need.split('*');
    return { item, count: Number(count) };
  });

const alternative = (id: string, needed: string): Alternative => ({
  id,
  needs: needs(needed),
  timePerValve: seconds(0),
  cost_minor: 0,
  chance: 1,
});

export function assemblyOf(id: string, parts: Partial<AssemblyParts>, energy: number): Assembly {
  const { assembly } = wheelAssembly();
  const figures = { ...assembly.figures, timePerValve: seconds(500), energyPerVisit: joules(energy) };
  return { ...assembly, id, parts: { ...assembly.parts, ...parts }, figures };
}

/**
 * A pack of 36 V and 5 Ah gives 36 × 5 × 0.8 = 144 Wh. Four wheels of 311.04 kJ through a head of 80 % and a drive of 60 % take 720 Wh or
 * five packs; all is done in one shift. A wheel (180 Wh) and two keys of 342.144 kJ (396 Wh) take 576 Wh or four packs. Two packs come with the drive.
 */
export const WHEEL = assemblyOf('wheel', {}, 311_040);
export const KEY = assemblyOf(
  'key',
  {
    adapters: ['SK-1', 'SK-1'],
    adapterExtensions: [[], ['SX-1', 'SX-1']],
    restraint: 'SR-1',
    options: [],
    accessories: [],
  },
  342_144,
);

const by = { family: 'f', core: 'a', slots: ['b', 'c'] } as const;
const WORK = [
  { classId: 'gates', crew: 0, qty: 4, ...by },
  { classId: 'gates', crew: 1, qty: 1, ...by },
  { classId: 'hydrants', crew: 1, qty: 2, family: 'f', core: 'k', slots: ['l'] },
] as const;

const PLAN: FleetPlan = {
  preference: 'cost',
  served: 7,
  asked: 8,
  kits: [],
  work: WORK,
  cost_minor: 0,
  objective: 0,
  bound: 0,
  gap: 0,
  proof: 'proven',
  effort: {},
};

/** Counted by hand; one lanyard set a crew, five spare packs wanted and four free. */
const COUNTED: OutcomeFacts = {
  lines: [
    sampleLine({ tag: 'V-1', qty: 3 }),
    sampleLine({ tag: 'V-2', qty: 2 }),
    sampleLine({ tag: 'H-1', qty: 3, place: { accessTime: stated('s', 120) } }),
  ],
  classes: [
    {
      id: 'gates',
      tags: ['V-1', 'V-2'],
      qty: 5,
      moveTime: seconds(600),
      families: [
        {
          id: 'f',
          cores: [alternative('a', 'SD-1 SH-1 SL-1 SC-1')],
          slots: [[alternative('b', 'SA-1 SA-2 SP-8*2')], [alternative('c', 'SR-2 SS-1')]],
        },
      ],
    },
    {
      id: 'hydrants',
      tags: ['H-1'],
      qty: 3,
      moveTime: seconds(720),
      families: [
        {
          id: 'f',
          cores: [alternative('k', 'SD-1 SH-1')],
          slots: [[alternative('l', 'SK-1 SX-1*2 SR-1')]],
        },
      ],
    },
  ],
  site: sampleSite({ crews: 2, days: 2 }),
  models: OUTCOME_MODELS,
  free: { ...Object.fromEntries(OUTCOME_MODELS.map(({ number }) => [number, 2])), 'SP-8': 4, 'SP-1': 4 },
  outcome: {
    preference: 'cost',
    fleet: PLAN,
    work: [
      { ...WORK[0], assembly: 'gates|wheel' },
      { ...WORK[1], assembly: 'gates|wheel' },
      { ...WORK[2], assembly: 'hydrants|key' },
    ],
    assemblies: { 'gates|wheel': WHEEL, 'hydrants|key': KEY },
    kits: [
      // 4 × (600 + 500) s; 7 × 6 + 7 + 2 × 6 for pegs + 4 × 1 kg; all but the two pegs are pieces.
      {
        crew: 0,
        items: needs('SA-1 SA-2 SC-1 SD-1 SH-1 SL-1 SN-1 SP-1*3 SP-8*2 SR-2 SS-1'),
        time_s: 4400,
        mass_kg: 65,
        pieces: 12,
      },
      // 600 + 500 + 2 × (600 + 120 + 500) s; besides the gates' pieces a key, two shafts and a restraint, 4 × 6 kg, and two packs fewer.
      {
        crew: 1,
        items: needs('SA-1 SA-2 SC-1 SD-1 SH-1 SK-1 SL-1 SN-1 SP-1 SP-8*2 SR-1 SR-2 SS-1 SX-1*2'),
        time_s: 3540,
        mass_kg: 87,
        pieces: 14,
        lacking: needs('SP-1'),
      },
    ],
    lines: [
      {
        tag: 'V-1',
        classId: 'gates',
        asked: 3,
        served: 3,
        parts: [{ crew: 0, qty: 3, assembly: 'gates|wheel' }],
      },
      {
        tag: 'V-2',
        classId: 'gates',
        asked: 2,
        served: 2,
        parts: [
          { crew: 0, qty: 1, assembly: 'gates|wheel' },
          { crew: 1, qty: 1, assembly: 'gates|wheel' },
        ],
      },
      {
        tag: 'H-1',
        classId: 'hydrants',
        asked: 3,
        served: 2,
        parts: [{ crew: 1, qty: 2, assembly: 'hydrants|key' }],
      },
    ],
  },
};

/** The days are the planning's own: every figure of them is worked out again by the checker, and by hand in its tests. */
export const OUTCOME: OutcomeFacts = {
  ...COUNTED,
  outcome: {
    ...COUNTED.outcome,
    crewDays: crewDays({
      ...COUNTED.outcome,
      lineDuties: COUNTED.lines.map((line) => ({ line, duty: sampleDuty({ tag: line.tag, strokes: line.strokes }) })),
      site: COUNTED.site,
      models: COUNTED.models,
      crewOffset: 1,
    }),
  },
};

/** The days of both crews as papers take them. */
export const SAMPLE_CREW_DAYS: readonly CrewDaysInput[] = [0, 1].map((crew) => ({
  crew: crew + 1,
  days: (OUTCOME.outcome.crewDays ?? []).filter((day) => day.crew === crew),
  heaviestCase: { mass_kg: 22.4, lift: 'one person, near the limit' },
}));
