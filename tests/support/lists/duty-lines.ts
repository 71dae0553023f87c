import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import { exactly, type Fact, fact, type Known, type Origin } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

/** Lines and sites for tests of duty: what is not given is missing. */
export const SAID: Origin = { basis: 'stated', source: 'Said by the customer.' };

export function say<U extends Unit>(unit: U, value: number): Known<U> {
  return exactly(unit, value, SAID);
}

export function sayFact<Value>(value: Value): Fact<Value> {
  return fact(value, SAID);
}

export function lineOf(parts: Partial<ScheduleLine> = {}): ScheduleLine {
  return {
    tag: 'V1',
    qty: 1,
    strokes: 2,
    process: {},
    state: {},
    stem: {},
    torque: {},
    interface: {},
    place: {},
    ...parts,
  };
}

export const PLAIN_SITE: Site = {
  sourcesAllowed: ['battery', 'air', 'petrol'],
  shiftHours: 8,
  crews: 1,
  personsPerCrew: 2,
  moveMinutes: 10,
  startsOn: '2030-03-04',
  days: 5,
  transport: 'road',
  operated: false,
  houseRules: [],
};

export const dutyOf = (parts: Partial<ScheduleLine> = {}): Duty =>
  assessDuty({ line: lineOf(parts), site: PLAIN_SITE });
export const findingIds = (duty: Duty): readonly string[] => duty.findings.map(({ id }) => id);
export const step = (duty: Duty, id: string) => duty.steps.find((one) => one.id === id);

export const tr = (majorDiameter: number, pitch: number, starts?: number) =>
  sayFact({
    form: 'trapezoidal',
    majorDiameter_m: majorDiameter / 1000,
    pitch_m: pitch / 1000,
    designation: `Tr${majorDiameter}x${pitch}`,
    ...(starts === undefined ? {} : { starts }),
  } as const);

/** Everything said: DN 200 wedge gate, rising stem Tr32x6 in a plain yoke nut, wheel of 400 mm, 10 bar. */
export const wedge: Partial<ScheduleLine> = {
  valveType: sayFact('wedge gate'),
  size: say('m', 0.2),
  rating: sayFact('Class 150'),
  process: { linePressure: say('Pa', 10e5), differentialPressure: say('Pa', 10e5), flowing: sayFact('still') },
  state: { condition: sayFact('free') },
  stem: {
    kind: sayFact('rising through the wheel'),
    thread: tr(32, 6, 1),
    diameter: say('m', 0.032),
    threadFriction: say('1', 0.15),
    collarFriction: say('1', 0.15),
    collarMeanDiameter: say('m', 0.048),
    collarBearing: sayFact('plain'),
    packingLoad: say('N', 2000),
    seatDiameter: say('m', 0.2),
    travel: say('m', 0.21),
    valveFactor: say('1', 0.3),
  },
  torque: { max: say('N·m', 150), closes: sayFact('clockwise') },
  interface: { drivenBy: sayFact('handwheel'), wheelDiameter: say('m', 0.4) },
};
