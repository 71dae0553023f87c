import type { AssemblyFacts } from '#lib/checking/chain.ts';
import type { AssemblyParts } from '#lib/equipment/assembly.ts';
import type { AccessoryModel, Model } from '#lib/equipment/model.ts';
import type { AccessoryFacts } from '#lib/equipment/parts.ts';
import { sampleBase } from '#lib/equipment/sample-model.ts';
import {
  ranged,
  SAMPLE_NUT,
  said,
  sampleDirection,
  sampleDuty,
  sampleGrip,
  sampleLine,
  sampleSite,
  stated,
} from '#lib/rules/sample-facts.ts';
import {
  SAMPLE_AIR,
  SAMPLE_GEAR,
  SAMPLE_PETROL,
  sampleCounter,
  sampleDrive,
  sampleHead,
  sampleJoint,
  sampleKey,
  sampleLimiter,
  sampleRestraint,
  sampleShaft,
  sampleWheelAdapter,
} from '#lib/rules/sample-parts.ts';
import { celsius, degrees, kilograms, metres, newtonMetres, perMinute } from '#lib/units/quantity.ts';
import { checkedAssembly } from '../checked.ts';

function accessory(number: string, kind: AccessoryFacts['kind']): AccessoryModel {
  return { ...sampleBase(number, `sample ${kind}`), role: 'accessory', facts: { kind, fits: [], saleItem: false } };
}

const PARTS: AssemblyParts = {
  drive: 'SD-1',
  gear: 0,
  head: 'SH-1',
  extensions: [],
  adapters: ['SA-1', 'SA-2'],
  restraint: 'SR-2',
  options: ['SL-1', 'SC-1'],
  accessories: [
    { number: 'SP-8', count: 2 },
    { number: 'SS-1', count: 1 },
  ],
};

/** Everything that a house of these tests has on its shelf. */
export const SHELF: readonly Model[] = [
  sampleDrive(),
  sampleHead(),
  sampleWheelAdapter(),
  sampleWheelAdapter({
    number: 'SA-2',
    mass_kg: 7,
    facts: {
      wheel: {
        diameter: { low: metres(0.45), high: metres(0.8) },
        spokes: { low: 3, high: 6 },
        dishUpTo: degrees(10),
        rimUpTo: metres(0.05),
      },
    },
  }),
  sampleKey(),
  sampleShaft(),
  sampleLimiter(),
  sampleCounter(),
  sampleRestraint(),
  sampleRestraint({
    number: 'SR-2',
    facts: { kind: 'reaction arm with chain', directions: 'one way', sideLoad: 'single anchor' },
  }),
  accessory('SP-8', 'pegs'),
  accessory('SS-1', 'second chain'),
];

/** A stiff wheel of uncertain size on a guess of what it stands: limiter, counter, two adapters, second chain, pegs. */
export function wheelAssembly(): AssemblyFacts {
  const guess = { ...stated('N·m', 300), basis: 'rule of thumb' } as const;
  const way = (starting: number) =>
    sampleDirection({
      starting: ranged('N·m', starting * 0.7, starting * 1.3),
      running: ranged('N·m', 40, 90),
      neverExceed: { kind: 'wheel', directions: ['opening', 'closing'], torque: guess },
    });
  const duty = sampleDuty({
    strokes: 3,
    opening: way(150),
    closing: way(120),
    turns: ranged('turn', 36, 48),
    countTurns: true,
    grip: sampleGrip({ wheelDiameter: ranged('m', 0.35, 0.6) }),
  });
  const line = sampleLine({ strokes: 3, state: { lastOperated: said(2019) } });
  const site = sampleSite({ temperature: { ...ranged('°C', 5, 30), low: celsius(5) } });
  const facts = { lineDuty: { line, duty }, site, models: SHELF };
  return { ...facts, assembly: checkedAssembly({ ...facts, parts: PARTS }) };
}

/** A nut at an uncertain depth: one key, alone and behind a shaft, no limiter. */
export function keyAssembly(): AssemblyFacts {
  const grip = { ...SAMPLE_NUT, depthToNut: ranged('m', 0.1, 2.6) };
  const facts = {
    lineDuty: { line: sampleLine({ strokes: 1 }), duty: sampleDuty({ strokes: 1, grip, movement: 'keyed' }) },
    site: sampleSite(),
    models: SHELF.filter(({ number }) => number !== 'SL-1'),
  };
  const parts: AssemblyParts = {
    ...PARTS,
    adapters: ['SK-1', 'SK-1'],
    adapterExtensions: [[], ['SX-1']],
    restraint: 'SR-1',
    options: [],
    accessories: [],
  };
  return { ...facts, assembly: checkedAssembly({ ...facts, parts }) };
}

const CURVED = {
  ...SAMPLE_GEAR,
  curve: [
    { torque: newtonMetres(0), speed: perMinute(120) },
    { torque: newtonMetres(40), speed: perMinute(110) },
    { torque: newtonMetres(80), speed: perMinute(60) },
    { torque: newtonMetres(100), speed: perMinute(0) },
  ],
};

/** A slanting nut on strong air: a curved gear, a limiter under the head, a double joint, a key of a stated section, a plate on the ground. */
export function jointAssembly(): AssemblyFacts {
  const grip = { ...SAMPLE_NUT, depthToNut: ranged('m', 0.8, 1.4) };
  const plain = sampleLine({ strokes: 1 });
  const way = sampleDirection({ starting: ranged('N·m', 60, 90), running: ranged('N·m', 30, 50) });
  const section = { outer: metres(0.028), inner: metres(0.01) };
  const limiter = { sits: 'after head', input: sampleShaft().facts.input, output: sampleShaft().facts.output } as const;
  const facts = {
    lineDuty: {
      line: { ...plain, place: { ...plain.place, misalignment: stated('°', 18), surface: said('concrete') } },
      duty: sampleDuty({ strokes: 1, grip, movement: 'keyed', opening: way, closing: way }),
    },
    site: sampleSite({ airPressure: stated('Pa', 6.6e5), crews: 2 }),
    models: [
      ...SHELF.filter(({ number }) => !['SD-1', 'SK-1', 'SL-1', 'SR-1'].includes(number)),
      sampleDrive({ facts: { gears: [CURVED], power: SAMPLE_AIR } }),
      sampleKey({ facts: { section } }),
      sampleJoint({ facts: { joints: 2 } }),
      sampleLimiter({ facts: limiter }),
      sampleRestraint({
        facts: { kind: 'ground plate', needs: ['firm ground'], weightOnPlate: kilograms(150), plateSide: metres(1.2) },
      }),
    ],
  };
  const parts: AssemblyParts = {
    ...PARTS,
    extensions: ['SJ-1'],
    adapters: ['SK-1'],
    restraint: 'SR-1',
    options: ['SL-1'],
    accessories: [],
  };
  return { ...facts, assembly: checkedAssembly({ ...facts, parts }) };
}

/** The key on a petrol drive in thin and warm air. */
export function petrolAssembly(): AssemblyFacts {
  const { assembly, ...key } = keyAssembly();
  const facts = {
    ...key,
    site: sampleSite({ altitude: stated('m', 1500), temperature: ranged('°C', 10, 38) }),
    models: key.models.map((model) =>
      model.number === 'SD-1' ? sampleDrive({ facts: { power: SAMPLE_PETROL } }) : model,
    ),
  };
  return { ...facts, assembly: checkedAssembly({ ...facts, parts: assembly.parts }) };
}
