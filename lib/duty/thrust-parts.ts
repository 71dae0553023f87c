/*
 * What all thrusts share: their inputs, the load on the seat, and nought.
 * Invariant: loads on seat and stem are never negative.
 * Not here: how they add up (stem-thrusts.ts, special-thrusts.ts).
 * Read next: stem-thrusts.ts.
 */
import { roundArea } from '#lib/engineering/stem-thrust.ts';
import { exactly, type Known } from '#lib/units/known-value.ts';
import { metres } from '#lib/units/quantity.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { calculate, type Sheet, term } from './sheet.ts';
import type { ValveCharacter } from './valve-character.ts';
import type { ValveLoads } from './valve-loads.ts';
import type { ValveStem } from './valve-stem.ts';

export interface ThrustGiven {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly stem: ValveStem;
  readonly sheet: Sheet;
}

export interface ThrustPair {
  readonly opening: Known<'N'>;
  readonly closing: Known<'N'>;
}

export interface Parts {
  /** Pressure on the stem's end, where the stem moves out. */
  readonly end: Known<'N'>;
  /** Packing that the stem slides through. */
  readonly slidingPacking: Known<'N'>;
}

export const NOTHING = exactly('N', 0, { basis: 'computed', source: 'Does not act on this stem.' });
/** Standard acceleration of free fall, ISO 80000-3. [m/s²] */
export const GRAVITY = 9.80665;

export function seatLoad({ loads, sheet }: ThrustGiven): Known<'N'> {
  return calculate(sheet, {
    id: 'seat-load',
    name: 'Load on the seat area',
    formula: 'Fd = Δp·π·D²/4',
    unit: 'N',
    source: 'Definition of pressure.',
    terms: {
      pressure: term('Δp', 'differential pressure', loads.differential),
      diameter: term('D', 'seat diameter', loads.seatDiameter),
    },
    evaluate: (at) => at('pressure') * roundArea(metres(at('diameter'))),
  });
}
