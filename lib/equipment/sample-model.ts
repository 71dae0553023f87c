/*
 * What every invented sample model has, whatever its role: mass, case, rates.
 * Invariant: a sample is no part of any catalogue; it stands in examples only.
 * Not here: facts of a role (rules/sample-parts.ts).
 * Read next: model.ts.
 */
import { toMinor } from '#lib/money/money.ts';
import { kilograms, metres } from '#lib/units/quantity.ts';
import type { Model } from './model.ts';

export type SampleBase = Omit<Model, 'role' | 'facts'>;

export function sampleBase(number: string, name: string): SampleBase {
  return {
    number,
    name,
    mass: kilograms(6),
    case: { length: metres(0.5), width: metres(0.4), height: metres(0.3) },
    rates: { day_minor: toMinor(2000), week_minor: toMinor(7000), four_weeks_minor: toMinor(20000), minimum_days: 1 },
    replacement_minor: toMinor(100000),
    counted: false,
    madeToOrder: false,
    marking: null,
  };
}
