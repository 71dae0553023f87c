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
