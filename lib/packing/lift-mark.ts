/*
 * How many persons lift a case or a piece.
 * Invariant: a heavier one never gets a lighter mark.
 * Not here: packing under a limit (pack-cases.ts), a full lifting assessment.
 * Read next: pack-cases.ts.
 */
import type { Kilograms } from '#lib/units/quantity.ts';

export const LIFT_MARKS = ['one person', 'one person, near the limit', 'two persons', 'lifting aid'] as const;
export type LiftMark = (typeof LIFT_MARKS)[number];

export interface Lift {
  readonly mark: LiftMark;
  readonly sentence: string;
  readonly source: string;
}

const LIFT_SOURCE =
  'HSE L23, guidance to the Manual Handling Operations Regulations: filter of 25 kg (men) and 16 kg (women) between knuckle and elbow, close to the body; two persons lift two thirds of the sum. A filter, not a limit in law.';

/** kg: 16 and 25 from the filter for one person, 2/3 of 2 × 25 for two. */
const ONE_PERSON_ALL = 16;
const ONE_PERSON = 25;
export const TWO_PERSONS = (2 / 3) * (2 * ONE_PERSON);

export function liftMark(mass: Kilograms): Lift {
  return { ...judge(mass), source: LIFT_SOURCE };
}

function judge(mass: Kilograms): Omit<Lift, 'source'> {
  if (mass <= ONE_PERSON_ALL) return { mark: 'one person', sentence: 'Below the filter for one person.' };
  if (mass <= ONE_PERSON)
    return {
      mark: 'one person, near the limit',
      sentence: 'One person, close to the body, between knuckle and elbow height; two where that cannot be.',
    };
  if (mass <= TWO_PERSONS) return { mark: 'two persons', sentence: 'Two persons lift it together.' };
  return {
    mark: 'lifting aid',
    sentence: 'More than two persons may lift by the filter: trolley, hoist or tail lift.',
  };
}
