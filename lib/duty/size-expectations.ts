/*
 * What is usual for a value of a line by its other values: size, type, rating, thread; each with its basis.
 * Invariant: an expectation stands only where all that it rests on is given; ranges are wide enough for odd but real valves.
 * Not here: asking about what lies outside (unlikely-values.ts).
 * Read next: unlikely-values.ts, ../engineering/valve-tables.ts.
 */
import { classPressure, ratingPressure } from '#lib/engineering/pressure-rating.ts';
import { between } from '#lib/engineering/straight-lines.ts';
import { waterworksTurns } from '#lib/engineering/turns.ts';
import { GATE_STEMS_MM, STEM_GROWTH_BY_BAR, WHEELS_MM } from '#lib/engineering/valve-tables.ts';
import type { Known } from '#lib/units/known-value.ts';
import { metres, turns } from '#lib/units/quantity.ts';
import { type Expectation, expect } from './expectation.ts';
import { type Limits, PLAUSIBLE } from './plausible-values.ts';
import type { ScheduleLine, ValveType } from './schedule-line.ts';
import { threadExpectations } from './thread-expectations.ts';

type Movement = 'sliding' | 'lifting' | 'geared or keyed';

const MOVEMENTS: Readonly<Record<ValveType, Movement>> = {
  gate: 'sliding',
  'wedge gate': 'sliding',
  'flexible wedge gate': 'sliding',
  'double disc gate': 'sliding',
  'parallel slide gate': 'sliding',
  'knife gate': 'sliding',
  penstock: 'sliding',
  globe: 'lifting',
  diaphragm: 'lifting',
  pinch: 'lifting',
  butterfly: 'geared or keyed',
  ball: 'geared or keyed',
  plug: 'geared or keyed',
  hydrant: 'geared or keyed',
  'stop tap': 'geared or keyed',
  unknown: 'sliding',
};

const COMMON = 'common practice, no source';

/** How far from the table a wheel, stem, travel, seat or number of turns may lie. Common practice, no source. */
const SHARES = {
  wheel: [0.35, 3],
  stem: [0.5, 2.5],
  sliding: { travel: [0.5, 2], turns: [0.2, 4] },
  lifting: { travel: [0.1, 1.2], turns: [0.05, 3] },
  seat: [0.3, 1.5],
} as const;

export function expectations(line: ScheduleLine): readonly Expectation[] {
  return [
    ...sizeExpectations(line),
    ...pressureExpectations(line),
    ...heatExpectations(line),
    ...threadExpectations(line),
  ];
}

function sizeExpectations(line: ScheduleLine): readonly Expectation[] {
  const { size } = line;
  if (size === undefined)
    return expect('wheel_diameter', line.interface.wheelDiameter, {
      usual: PLAUSIBLE.wheel_diameter.usual,
      against: 'for any valve',
      about: ['size'],
      basis: COMMON,
      widens: true,
    });
  const movement = MOVEMENTS[line.valveType?.value ?? 'unknown'];
  const against = `for a ${sizeName(size)} valve`;
  const share = (range: Limits): Limits => [size.low * range[0], size.high * range[1]];
  const rest = { against, about: ['size'], basis: COMMON, widens: false };
  const always: readonly Expectation[] = [
    ...expect('seat_diameter', line.stem.seatDiameter, { ...rest, usual: share(SHARES.seat) }),
    ...expect('stem_protrusion', line.interface.stemProtrusion, { ...rest, usual: [0, 2.5 * size.high + 0.5] }),
    ...expect('nut_size', line.interface.nut?.acrossFlats, {
      ...rest,
      usual: [0.004, Math.max(0.065, 0.04 + 0.15 * size.high)],
    }),
  ];
  if (movement === 'geared or keyed' || isGeared(line)) return always;
  const wheel = tableRange(WHEELS_MM, size, SHARES.wheel);
  return [
    ...always,
    ...(line.interface.drivenBy?.value === 'pillar'
      ? []
      : expect('wheel_diameter', line.interface.wheelDiameter, { ...rest, usual: wheel, widens: true })),
    ...expect('stem_diameter', line.stem.diameter, {
      ...rest,
      usual: stemRange(line, size),
      basis: 'API Std 600, least stem diameters by size and class, with a wide margin (part from memory)',
      widens: true,
    }),
    ...expect('travel', line.stem.travel, { ...rest, usual: share(SHARES[movement].travel) }),
    ...expect('turns', line.torque.turns, {
      ...rest,
      usual: turnsRange(size, SHARES[movement].turns),
      basis: 'Waterworks rule of three turns to the inch, with a wide margin; common practice, no source',
    }),
  ];
}

function isGeared({ torque, interface: grip }: ScheduleLine): boolean {
  const drive = grip.drivenBy?.value ?? '';
  return torque.gearbox !== undefined || (torque.gearRatio?.nominal ?? 1) > 1 || drive.startsWith('gearbox');
}

function tableRange(points: readonly (readonly [number, number])[], size: Known<'m'>, [low, high]: Limits): Limits {
  const at = (metre: number): number => between({ points, x: metre * 1000 }) / 1000;
  return [at(size.low) * low, at(size.high) * high];
}

function stemRange(line: ScheduleLine, size: Known<'m'>): Limits {
  const [low, high] = tableRange(GATE_STEMS_MM, size, SHARES.stem);
  const rated = line.rating === undefined ? null : ratingPressure(line.rating.value);
  return [low, high * between({ points: STEM_GROWTH_BY_BAR, x: (rated ?? 0) / 1e5 })];
}

function turnsRange(size: Known<'m'>, [low, high]: Limits): Limits {
  const none = turns(0);
  return [
    Math.max(1, waterworksTurns({ size: metres(size.low), extra: none }) * low),
    waterworksTurns({ size: metres(size.high), extra: turns(2) }) * high,
  ];
}

/** A line carries no more than its rating, but for a tenth that relief allows. */
function pressureExpectations({ rating, process }: ScheduleLine): readonly Expectation[] {
  const rated = rating === undefined ? null : ratingPressure(rating.value);
  if (rating === undefined || rated === null) return [];
  const ratingClass = Number(/class\s*(\d+)/i.exec(rating.value)?.[1] ?? Number.NaN);
  const heat = process.temperature;
  const hot = heat === undefined ? null : classPressure({ ratingClass, temperature: heat.nominal });
  const most = Math.min(rated, hot ?? rated);
  const rest = {
    usual: [0, most * 1.1] as const,
    against: `for the rating ${rating.value}${most < rated ? ' at its temperature' : ''}`,
    about: ['rating'],
    basis:
      'ASME B16.34, EN 1333: what the rating stands for, and a tenth for relief; iron classes and K ratings from memory',
    widens: false,
  };
  return [
    ...expect('line_pressure', process.linePressure, rest),
    ...expect('differential_pressure', process.differentialPressure, rest),
  ];
}

/** Drinking water and food stay where rubber seats live; a Class rating of carbon steel ends at 425 °C. */
function heatExpectations({ rating, process, stem }: ScheduleLine): readonly Expectation[] {
  const service = process.service?.value;
  const cold = service === 'potable' || service === 'sewage';
  const material = stem.material?.value ?? '';
  const bronze = /bronze|brass|gunmetal/i.test(material);
  return [
    ...(cold
      ? expect('temperature', process.temperature, {
          usual: [-5, 70],
          against: `for ${service === 'potable' ? 'potable water' : 'sewage'}`,
          about: ['service'],
          basis: COMMON,
          widens: false,
        })
      : []),
    ...(bronze
      ? expect('temperature', process.temperature, {
          usual: [-200, 260],
          against: `with a stem of ${material}`,
          about: ['stem_material'],
          basis: 'ASME B16.24 ends copper alloys at 260 °C (from memory)',
          widens: false,
        })
      : []),
    ...(/PN/i.test(rating?.value ?? '') && !cold
      ? expect('temperature', process.temperature, {
          usual: [-196, 450],
          against: `for the rating ${rating?.value}`,
          about: ['rating'],
          basis: 'EN 1092-1 tables of common steels end near 450 °C (from memory)',
          widens: false,
        })
      : []),
  ];
}

function sizeName(size: Known<'m'>): string {
  const dn = (metre: number): string => String(Math.round(metre * 1000));
  return size.low === size.high ? `DN ${dn(size.nominal)}` : `DN ${dn(size.low)} to DN ${dn(size.high)}`;
}
