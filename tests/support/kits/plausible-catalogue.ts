/*
 * Seeded invented catalogues of any size for benches: three duty classes whose couplings, torques and masses belong together.
 */
import type { Coupling } from '#lib/equipment/coupling.ts';
import { DUTY_CLASSES, type DutyClass } from '#lib/equipment/drive.ts';
import type { Model } from '#lib/equipment/model.ts';
import { type SampleBase, sampleBase } from '#lib/equipment/sample-model.ts';
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import { toMinor } from '#lib/money/money.ts';
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
import {
  decibels,
  degrees,
  kilograms,
  metres,
  newtonMetres,
  newtons,
  perMinute,
  ratio,
  seconds,
} from '#lib/units/quantity.ts';

/** What a duty class couples with and how strong it is: torque of the drive at stall, factor on everything else. */
const CLASSES: Readonly<Record<DutyClass, { spline: string; square: string; stall: number; scale: number }>> = {
  light: { spline: 'spline 20', square: '20', stall: 50, scale: 1 },
  medium: { spline: 'spline 28', square: '25', stall: 110, scale: 2.2 },
  heavy: { spline: 'spline 38', square: '40', stall: 260, scale: 5 },
};
/** Parts of a catalogue by role; the rest are accessories. */
const SHARES = { drive: 0.14, head: 0.16, wheel: 0.24, nut: 0.12, extension: 0.1, restraint: 0.14, limiter: 0.05 };

type Draw = (from: number, to: number) => number;
interface Making {
  readonly index: number;
  readonly dutyClass: DutyClass;
  readonly draw: Draw;
  readonly pick: <Value>(values: readonly Value[]) => Value;
}

/** The catalogue, with how many of each model the house has free. */
export function plausibleCatalogue(at: { readonly seed: number; readonly models: number }): {
  readonly models: readonly Model[];
  readonly free: Readonly<Record<string, number>>;
} {
  const random = seededRandom(at.seed);
  const draw: Draw = (from, to) => from + (to - from) * random();
  const makers = {
    drive: makeDrive,
    head: makeHead,
    wheel: makeWheelAdapter,
    nut: makeKey,
    extension: makeExtension,
    restraint: makeRestraint,
    limiter: makeLimiter,
  } as const;
  const models = (['drive', 'head', 'wheel', 'nut', 'extension', 'restraint', 'limiter'] as const).flatMap((role) =>
    Array.from({ length: Math.max(3, Math.round(at.models * SHARES[role])) }, (_, index) => {
      const making = { index, dutyClass: DUTY_CLASSES[index % 3] ?? 'light', draw, pick: pickWith(random) };
      return priced(makers[role](making), { ...making, role });
    }),
  );
  const extras = [sampleCounter({ number: 'C-1' }), sampleCounter({ number: 'C-2', facts: { highestTurns: 9999 } })];
  const all = [...models, ...extras, ...accessories(at.models - models.length - extras.length)];
  return { models: all, free: Object.fromEntries(all.map((model) => [model.number, Math.round(draw(1, 5))])) };
}

function pickWith(random: Random): Making['pick'] {
  return (values) => {
    const value = values[Math.floor(random() * values.length)];
    if (value === undefined) throw new Error('Nothing to pick from.');
    return value;
  };
}

const spline = (dutyClass: DutyClass, gender: Coupling['gender']): Coupling => ({
  form: 'spline',
  size: CLASSES[dutyClass].spline,
  gender,
});
const square = (dutyClass: DutyClass, gender: Coupling['gender']): Coupling => ({
  form: 'square',
  size: CLASSES[dutyClass].square,
  gender,
});
const round = (value: number, step: number): number => Math.round(value / step) * step;

const DAY_RATES: Readonly<Record<keyof typeof SHARES, number>> = {
  drive: 45,
  head: 18,
  wheel: 9,
  nut: 8,
  extension: 6,
  restraint: 12,
  limiter: 14,
};
const MASSES: Readonly<Record<keyof typeof SHARES, number>> = {
  drive: 6,
  head: 4,
  wheel: 3,
  nut: 4,
  extension: 2,
  restraint: 5,
  limiter: 1.5,
};

/** Stronger pieces are dearer and heavier, each with a price of its own. */
function priced(model: Model, at: Making & { readonly role: keyof typeof SHARES }): Model {
  const bigger = Math.sqrt(CLASSES[at.dutyClass].scale);
  const day = round(DAY_RATES[at.role] * bigger * at.draw(0.7, 1.6) * 100, 50);
  return {
    ...model,
    mass: kilograms(round(MASSES[at.role] * bigger * at.draw(0.8, 1.4), 0.1)),
    rates: {
      day_minor: toMinor(day),
      week_minor: toMinor(round(day * 3.5, 50)),
      four_weeks_minor: toMinor(round(day * 10, 50)),
      minimum_days: 1,
    },
  };
}

function makeDrive({ index, dutyClass, draw, pick }: Making): Model {
  const { stall } = CLASSES[dutyClass];
  const high = round(stall * draw(0.7, 1.5), 5);
  const speed = round(draw(50, 120), 5);
  const source = pick(['battery', 'battery', 'air', 'air', 'petrol'] as const);
  const gear = (name: string, share: number) => ({
    name,
    stallTorque: newtonMetres(high * share),
    ratedTorque: newtonMetres(high * share * 0.6),
    freeSpeed: perMinute(speed / share),
  });
  const power = { battery: undefined, air: SAMPLE_AIR, petrol: SAMPLE_PETROL }[source];
  const built = {
    lowest: newtonMetres(round(high * 0.2, 5)),
    highest: newtonMetres(high),
    error: ratio(0.1),
    overshoot: newtonMetres(2),
    step: newtonMetres(5),
    bothDirections: true,
  };
  return sampleDrive({
    number: `D-${index}`,
    facts: {
      dutyClass,
      gears: draw(0, 1) < 0.6 ? [gear('low', 1), gear('high', 0.4)] : [gear('single', 1)],
      output: spline(dutyClass, 'male'),
      soundPressure: decibels(source === 'petrol' ? 98 : 82),
      limiter: draw(0, 1) < 0.3 ? built : null,
      ...(power === undefined ? {} : { power }),
    },
  });
}

function makeHead({ index, dutyClass, draw, pick }: Making): Model {
  const { stall } = CLASSES[dutyClass];
  const kind = pick(['inline', 'right-angle', 'open-centre', 'open-centre'] as const);
  const step = pick([1.5, 2, 3, 4, 5]);
  return sampleHead({
    number: `H-${index}`,
    facts: {
      kind,
      ratio: ratio(step),
      efficiency: { low: ratio(0.8), high: ratio(0.92) },
      torqueRating: newtonMetres(round(stall * step * draw(0.9, 1.6), 10)),
      maxInputSpeed: perMinute(400),
      input: spline(dutyClass, 'female'),
      output: square(dutyClass, 'male'),
      bore: metres(round(draw(0.03, 0.09), 0.005)),
      swingRadius: metres(round(draw(0.2, 0.5), 0.01)),
      height: metres(round(draw(0.12, 0.3), 0.01)),
    },
  });
}

function makeWheelAdapter({ index, dutyClass, draw, pick }: Making): Model {
  const low = 0.15 + 0.05 * (Math.floor(index / 3) % 12);
  return sampleWheelAdapter({
    number: `A-${index}`,
    facts: {
      kind: pick(['peg plate', 'self-centring driver', 'spoke driver', 'bolt-on plate'] as const),
      input: square(dutyClass, 'female'),
      wheel: {
        diameter: { low: metres(low), high: metres(low + round(draw(0.15, 0.5), 0.05)) },
        spokes: { low: 3, high: pick([5, 6, 8]) },
        dishUpTo: degrees(pick([10, 20, 30])),
        rimUpTo: metres(0.05),
      },
      takesExtension: draw(0, 1) < 0.5,
      bore: metres(round(draw(0.03, 0.1), 0.005)),
      torqueRating: newtonMetres(round(200 * CLASSES[dutyClass].scale * draw(0.7, 1.8), 10)),
      fittingTime: seconds(round(draw(60, 400), 10)),
      holdsSideways: draw(0, 1) < 0.7,
    },
  });
}

const ACROSS_FLATS = [0.029, 0.036, 0.024, 0.032, 0.019, 0.05];

function makeKey({ index, dutyClass, draw }: Making): Model {
  const across = ACROSS_FLATS[Math.floor(index / 3) % ACROSS_FLATS.length] ?? 0.029;
  const shortest = round(draw(0.5, 1.4), 0.1);
  return sampleKey({
    number: `K-${index}`,
    facts: {
      input: square(dutyClass, 'female'),
      sockets: [{ shape: index % 5 === 4 ? 'hexagon' : 'square', acrossFlats: metres(across), slack: metres(0.004) }],
      length: { low: metres(shortest), high: metres(shortest + round(draw(0.6, 1.8), 0.1)) },
      torqueRating: newtonMetres(round(200 * CLASSES[dutyClass].scale * draw(0.7, 1.8), 10)),
      fittingTime: seconds(round(draw(30, 150), 10)),
    },
  });
}

/** Every third changes to the next square, as adapters between classes do. */
function makeExtension({ index, dutyClass, draw, pick }: Making): Model {
  const next = index % 9 < 3 ? (DUTY_CLASSES[(index + 1) % 3] ?? dutyClass) : dutyClass;
  const length = metres(next === dutyClass ? pick([0.3, 0.5, 0.8, 1.2]) : 0.06);
  const facts = {
    input: square(dutyClass, 'female'),
    output: square(next, 'male'),
    torqueRating: newtonMetres(round(180 * CLASSES[dutyClass].scale * draw(0.7, 1.6), 10)),
    maxSpeed: perMinute(round(draw(40, 160), 10)),
  };
  if (index % 7 === 6) return sampleJoint({ number: `E-${index}`, facts });
  const bored = draw(0, 1) < 0.3 ? { bore: metres(0.06) } : {};
  return sampleShaft({ number: `E-${index}`, facts: { ...facts, ...bored, length: { low: length, high: length } } });
}

const RESTRAINTS = [
  { kind: 'reaction arm with chain', needs: ['structure', 'large pipe'], directions: 'one way', setUp: 200 },
  { kind: 'twin-point arm', needs: ['structure'], directions: 'both ways', setUp: 300 },
  { kind: 'tow-bar brace', needs: ['vehicle'], directions: 'both ways', setUp: 420 },
  { kind: 'ground plate', needs: ['firm ground'], directions: 'both ways', setUp: 260 },
  { kind: 'street stand', needs: ['street surface'], directions: 'both ways', setUp: 240 },
  { kind: 'reaction arm with strap', needs: ['large pipe', 'flange'], directions: 'one way', setUp: 180 },
] as const;

function makeRestraint({ index, dutyClass, draw, pick }: Making): Model {
  const { kind, needs, directions, setUp } = pick(RESTRAINTS);
  const { scale } = CLASSES[dutyClass];
  return sampleRestraint({
    number: `R-${index}`,
    facts: {
      kind,
      needs,
      ...(kind === 'ground plate' ? { plateSide: metres(1.2), weightOnPlate: kilograms(150) } : {}),
      directions,
      sideLoad: kind === 'twin-point arm' ? 'balanced' : 'single anchor',
      torqueRating: newtonMetres(round(260 * scale * draw(0.8, 1.8), 10)),
      forceRating: newtons(round(2200 * scale * draw(0.8, 1.8), 100)),
      arm: { low: metres(round(draw(0.4, 0.7), 0.05)), high: metres(1.2) },
      followsTravel: draw(0, 1) < 0.6,
      setUpTime: seconds(round(setUp * draw(0.7, 1.4), 10)),
    },
  });
}

function makeLimiter({ index, dutyClass, draw }: Making): Model {
  const after = index % 2 === 0;
  const { stall, scale } = CLASSES[dutyClass];
  const highest = round(after ? stall * draw(1, 1.6) : 300 * scale * draw(0.7, 1.4), 10);
  const join = after ? spline : square;
  return sampleLimiter({
    number: `L-${index}`,
    facts: {
      sits: after ? 'after drive' : 'after head',
      input: join(dutyClass, 'female'),
      output: join(dutyClass, 'male'),
      lowest: newtonMetres(round(highest * 0.1, 1)),
      highest: newtonMetres(highest),
      error: ratio(after ? 0.1 : 0.06),
      step: newtonMetres(round(Math.max(1, highest / 60), 1)),
      bore: metres(0.07),
    },
  });
}

function accessories(count: number): readonly Model[] {
  const kinds = ['second chain', 'charger', 'spare pack', 'air hose', 'hose restraint', 'pegs', 'lanyards'] as const;
  return Array.from({ length: Math.max(1, count) }, (_, index): Model => {
    const base: SampleBase = sampleBase(`S-${index + 1}`, 'accessory');
    const kind = kinds[index % kinds.length] ?? 'lanyards';
    return { ...base, mass: kilograms(1), role: 'accessory', facts: { kind, fits: [], saleItem: false } };
  });
}
