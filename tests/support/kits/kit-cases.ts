import type { Site } from '#lib/duty/site.ts';
import type { Coupling } from '#lib/equipment/coupling.ts';
import type { AccessoryModel, Model } from '#lib/equipment/model.ts';
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import type { LineDuty } from '#lib/kits/find-choices.ts';
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
import { kilograms, metres, newtonMetres, newtons, perMinute, ratio, seconds } from '#lib/units/quantity.ts';

export interface KitCase {
  readonly lineDuty: LineDuty;
  readonly site: Site;
  readonly models: readonly Model[];
}

/** Slim enough to whirl now and then at what the drives give. */
const SLIM = [
  { outer: metres(0.008), inner: metres(0) },
  { outer: metres(0.014), inner: metres(0.01) },
  { outer: metres(0.026), inner: metres(0) },
] as const;

/** Mostly one size, so that most houses can serve something. */
const SIZES = ['20', '20', '20', '25'] as const;

/** A small random house and one line for it; small enough to try everything. */
export function randomKitCase(seed: number): KitCase {
  const random = seededRandom(seed);
  const onNut = below(random, 2) === 0;
  const models = [
    ...times(1 + below(random, 3), (index) => randomDrive(random, index)),
    ...times(1 + below(random, 3), (index) => randomHead(random, index)),
    ...times(2 + below(random, 4), (index) =>
      randomAdapter(random, { index, onNut: below(random, 6) > 0 ? onNut : !onNut }),
    ),
    ...times(below(random, 4), (index) => randomExtension(random, index)),
    ...times(1 + below(random, 4), (index) => randomRestraint(random, index)),
    ...times(below(random, 3), (index) => randomLimiter(random, index)),
    ...times(below(random, 2), (index) => sampleCounter({ number: `C-${index}` })),
    ...(below(random, 2) === 0 ? [secondChain()] : []),
  ];
  return { lineDuty: randomLine(random, onNut), site: randomSite(random), models };
}

/** A random house of as many models as asked, and lines that differ from each other. */
export function randomHouse(at: { readonly seed: number; readonly models: number; readonly lines: number }): {
  readonly lines: readonly LineDuty[];
  readonly site: Site;
  readonly models: readonly Model[];
} {
  const random = seededRandom(at.seed);
  const share = (part: number): number => Math.round(at.models * part);
  const models = [
    ...times(share(0.13), (index) => fitted(randomDrive(random, index), { output: DRIVE_SIDE[index % 3] })),
    ...times(share(0.18), (index) =>
      fitted(randomHead(random, index), { input: DRIVE_SIDE[index % 3], output: VALVE_SIDE[index % 4] }),
    ),
    ...times(share(0.35), (index) =>
      fitted(randomAdapter(random, { index, onNut: index % 2 === 0 }), { input: VALVE_SIDE[index % 4] }),
    ),
    ...times(share(0.08), (index) =>
      fitted(randomExtension(random, index), { input: VALVE_SIDE[index % 4], output: VALVE_SIDE[(index >> 2) % 4] }),
    ),
    ...times(share(0.16), (index) => randomRestraint(random, index)),
    ...times(share(0.05), (index) => {
      const size = (index % 2 === 0 ? DRIVE_SIDE : VALVE_SIDE)[index % 3];
      const sits = index % 2 === 0 ? 'after drive' : 'after head';
      return fitted(withSeat(randomLimiter(random, index), sits), { input: size, output: size });
    }),
    ...times(2, (index) => sampleCounter({ number: `C-${index}` })),
    secondChain(),
  ];
  const lines = times(at.lines, (index) => {
    const { line, duty } = randomLine(random, index % 2 === 0);
    const tag = `V-${index + 1}`;
    return { line: { ...line, tag }, duty: { ...duty, tag } };
  });
  return { lines, site: sampleSite(), models };
}

const DRIVE_SIDE = ['20', '25', '40'] as const;
const VALVE_SIDE = ['12.5', '20', '25', '40'] as const;

/** The same model with couplings of other sizes, as catalogues have them in classes. */
function fitted(
  model: Model,
  sizes: { readonly input?: string | undefined; readonly output?: string | undefined },
): Model {
  const of = (coupling: Coupling, size: string | undefined): Coupling => ({ ...coupling, size: size ?? coupling.size });
  switch (model.role) {
    case 'drive':
      return { ...model, facts: { ...model.facts, output: of(model.facts.output, sizes.output) } };
    case 'head':
      return {
        ...model,
        facts: {
          ...model.facts,
          input: of(model.facts.input, sizes.input),
          output: of(model.facts.output, sizes.output),
        },
      };
    case 'extension':
      return {
        ...model,
        facts: {
          ...model.facts,
          input: of(model.facts.input, sizes.input),
          output: of(model.facts.output, sizes.output),
        },
      };
    case 'adapter':
      return { ...model, facts: { ...model.facts, input: of(model.facts.input, sizes.input) } };
    case 'option': {
      const { input, output } = model.facts;
      if (input === undefined || output === undefined) return model;
      return { ...model, facts: { ...model.facts, input: of(input, sizes.input), output: of(output, sizes.output) } };
    }
    default:
      return model;
  }
}

function withSeat(model: Model, sits: 'after drive' | 'after head'): Model {
  return model.role === 'option' ? { ...model, facts: { ...model.facts, sits } } : model;
}

function randomDrive(random: Random, index: number): Model {
  const stall = 60 + below(random, 160);
  const low = {
    name: 'low',
    stallTorque: newtonMetres(stall),
    ratedTorque: newtonMetres(stall * 0.6),
    freeSpeed: perMinute(60 + below(random, 80)),
  };
  const high = {
    name: 'high',
    stallTorque: newtonMetres(stall / 2),
    ratedTorque: newtonMetres(stall * 0.3),
    freeSpeed: perMinute(low.freeSpeed * 2),
  };
  const power = pick(random, [sampleDrive().facts.power, SAMPLE_AIR, SAMPLE_PETROL]);
  const built = {
    lowest: newtonMetres(10),
    highest: newtonMetres(stall),
    error: ratio(0.1),
    overshoot: newtonMetres(3),
    step: newtonMetres(2),
    bothDirections: below(random, 4) > 0,
  };
  return sampleDrive({
    number: `D-${index}`,
    mass_kg: 4 + below(random, 20),
    facts: {
      gears: below(random, 2) === 0 ? [low] : [low, high],
      power,
      limiter: below(random, 4) === 0 ? built : null,
    },
  });
}

function randomHead(random: Random, index: number): Model {
  return sampleHead({
    number: `H-${index}`,
    facts: {
      kind: pick(random, ['inline', 'right-angle', 'open-centre']),
      ratio: ratio(2 + below(random, 5)),
      torqueRating: newtonMetres(300 + below(random, 900)),
      output: coupling(random, 'male'),
      bore: metres(0.02 + 0.04 * random()),
    },
  });
}

function randomAdapter(random: Random, { index, onNut }: { readonly index: number; readonly onNut: boolean }): Model {
  const shared = {
    input: coupling(random, 'female'),
    torqueRating: newtonMetres(150 + below(random, 900)),
    fittingTime: seconds(30 + below(random, 200)),
  };
  if (!onNut) {
    const low = 0.2 + 0.15 * random();
    const wheel = sampleWheelAdapter().facts.wheel;
    return sampleWheelAdapter({
      number: `A-${index}`,
      facts: {
        ...shared,
        takesExtension: below(random, 2) === 0,
        ...(wheel === undefined
          ? {}
          : { wheel: { ...wheel, diameter: { low: metres(low), high: metres(low + 0.2 + 0.3 * random()) } } }),
      },
    });
  }
  const across = 0.03 + 0.005 * random();
  const shortest = 0.4 + 0.8 * random();
  return sampleKey({
    number: `A-${index}`,
    facts: {
      ...shared,
      sockets: [{ shape: 'square', acrossFlats: metres(across), slack: metres(0.006) }],
      length: { low: metres(shortest), high: metres(shortest + 0.6 + random()) },
      ...(index % 3 === 2 ? {} : { section: SLIM[index % 3] ?? SLIM[0] }),
    },
  });
}

function randomExtension(random: Random, index: number): Model {
  const length = metres(pick(random, [0.06, 0.4, 0.9]));
  const facts = {
    input: coupling(random, 'female'),
    output: coupling(random, 'male'),
    torqueRating: newtonMetres(100 + below(random, 500)),
  };
  return below(random, 4) === 0
    ? sampleJoint({ number: `E-${index}`, facts })
    : sampleShaft({
        number: `E-${index}`,
        facts: {
          ...facts,
          length: { low: length, high: length },
          ...(index % 2 === 0 && length > 0.1 ? { section: SLIM[(index >> 1) % 3] ?? SLIM[0] } : {}),
          ...(below(random, 2) === 0 ? { bore: metres(0.05) } : {}),
        },
      });
}

function randomRestraint(random: Random, index: number): Model {
  const kind = pick(random, [
    'reaction arm with chain',
    'twin-point arm',
    'tow-bar brace',
    'ground plate',
    'purpose-made restraint',
  ] as const);
  const needs = {
    'reaction arm with chain': ['structure', 'large pipe'],
    'twin-point arm': ['structure'],
    'tow-bar brace': ['vehicle'],
    'ground plate': ['firm ground'],
    'purpose-made restraint': ['workshop'],
  }[kind];
  return sampleRestraint({
    number: `R-${index}`,
    ...(kind === 'purpose-made restraint' ? { madeToOrder: true as const } : {}),
    facts: {
      kind,
      needs,
      directions: kind === 'reaction arm with chain' ? 'one way' : 'both ways',
      sideLoad: kind === 'twin-point arm' ? 'balanced' : 'single anchor',
      torqueRating: newtonMetres(300 + below(random, 1200)),
      forceRating: newtons(1000 + below(random, 7000)),
      ...(kind === 'ground plate' ? { plateSide: metres(1.2), weightOnPlate: kilograms(160) } : {}),
      followsTravel: below(random, 3) > 0,
      setUpTime: seconds(120 + below(random, 300)),
    },
  });
}

function randomLimiter(random: Random, index: number): Model {
  const under = below(random, 2) === 0;
  const size = under ? pick(random, SIZES) : '20';
  return sampleLimiter({
    number: `L-${index}`,
    facts: {
      sits: under ? 'after head' : 'after drive',
      input: { form: 'square', size, gender: 'female' },
      output: { form: 'square', size, gender: 'male' },
      highest: newtonMetres(under ? 600 : 150),
      bore: metres(0.05),
    },
  });
}

function secondChain(): AccessoryModel {
  const { number: _number, role: _role, facts: _facts, ...base } = sampleCounter();
  return { ...base, number: 'S-1', role: 'accessory', facts: { kind: 'second chain', fits: [], saleItem: false } };
}

function randomLine(random: Random, onNut: boolean): LineDuty {
  const start = 30 + below(random, 160);
  const never = start * (0.95 + 5 * random());
  const way = sampleDirection({
    starting: below(random, 2) === 0 ? stated('N·m', start) : ranged('N·m', start * 0.5, start * 1.5),
    running: stated('N·m', start * 0.5),
    neverExceed: { kind: 'stated', directions: ['opening', 'closing'], torque: stated('N·m', never) },
  });
  const wheel = 0.25 + 0.3 * random();
  const rises = pick(random, ['no', 'no', 'no', 'no', 'yes', 'maybe'] as const);
  const depth = below(random, 3) === 0 ? 0.1 : 0.6 + random();
  const grip = onNut
    ? {
        ...SAMPLE_NUT,
        nutSizes: below(random, 2) === 0 ? [stated('m', 0.029)] : [stated('m', 0.029), stated('m', 0.034)],
        depthToNut: below(random, 2) === 0 ? stated('m', depth) : ranged('m', depth, depth + 0.3),
      }
    : sampleGrip({
        wheelDiameter: below(random, 2) === 0 ? stated('m', wheel) : ranged('m', wheel, wheel + 0.15),
        stemRisesThroughWheel: rises,
        wheelRises: rises === 'no' && below(random, 2) === 0 ? 'yes' : 'no',
        stemDiameter: stated('m', 0.03),
        stemProtrusion: stated('m', 0.3),
        travel: stated('m', 0.3),
      });
  const plain = sampleLine();
  const line = {
    ...plain,
    place: {
      ...plain.place,
      anchor: said(pick(random, ['structure', 'structure', 'large pipe', 'none'])),
      ...(below(random, 10) === 0 ? { misalignment: stated('°', 12) } : {}),
      ...(below(random, 8) === 0 ? { reach: stated('m', 1.2) } : {}),
      ...(below(random, 4) === 0 ? { vehicleDistance: stated('m', 1 + below(random, 4)) } : {}),
    },
  };
  const duty = sampleDuty({
    opening: way,
    closing: way,
    grip,
    countTurns: below(random, 4) === 0,
    movement: onNut ? 'keyed' : 'screw',
  });
  return { line, duty };
}

function randomSite(random: Random): Site {
  const all = ['battery', 'air', 'petrol'] as const;
  return sampleSite({
    sourcesAllowed: below(random, 3) === 0 ? [pick(random, all)] : all,
    vehicleAccess: below(random, 2) === 0,
  });
}

function coupling(random: Random, gender: Coupling['gender']): Coupling {
  return { form: 'square', size: pick(random, SIZES), gender };
}

function below(random: Random, limit: number): number {
  return Math.floor(random() * limit);
}

function pick<Value>(random: Random, values: readonly [Value, ...Value[]] | readonly Value[]): Value {
  const value = values[below(random, values.length)];
  if (value === undefined) throw new Error('Nothing to pick from.');
  return value;
}

function times<Value>(count: number, make: (index: number) => Value): readonly Value[] {
  return Array.from({ length: count }, (_, index) => make(index));
}
