/*
 * Lifting as a screening figure: a simple flag by mass, the filter by zone, and the revised lifting equation inside its scope.
 * Invariant: outside its scope the equation refuses with the reason, never with a number.
 * Not here: packing into cases (packing); it is no assessment by a competent person.
 * Read next: lifting-tables.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Degrees, type Kilograms, kilograms, type Metres, type Seconds } from '#lib/units/quantity.ts';
import {
  COUPLING_MULTIPLIERS,
  FILTER_SHARES,
  FREQUENCY_MULTIPLIERS,
  LIFTING_FILTER,
  OUTSIDE_LIFTING_EQUATION,
} from './lifting-tables.ts';
import { between, type Point } from './straight-lines.ts';

export type LiftFlag = 'one person' | 'one person, near the limit' | 'two persons' | 'mechanical aid';

/**
 * Lift mark of a piece or a case.
 *
 * Formula: ≤ 16 kg one person; ≤ 25 kg near the limit; ≤ 33 kg two persons; above: mechanical aid
 *
 * @param mass - Mass of the piece or case. [kg] range 0…1000
 * @returns How it is to be lifted. [–]
 * @source Health and Safety Executive, L23: filter 16/25 kg and two thirds of two persons' sum; thresholds of the house.
 * @assumes Lifted close, between knuckle and elbow, now and then.
 * @example liftFlag(kilograms(28)) // => 'two persons'
 */
export function liftFlag(mass: Kilograms): LiftFlag {
  if (mass <= 16) return 'one person';
  if (mass <= 25) return 'one person, near the limit';
  return mass <= teamCapability([25, 25]) ? 'two persons' : 'mechanical aid';
}

/**
 * What a team lifts together.
 *
 * Formula: one: c; two: 2/3·Σc; three: 1/2·Σc; more: as three of the weakest
 *
 * @param capabilities - What each person may lift alone, in kilograms. [kg] range 0…25; at least one
 * @returns What they may lift together. [kg]
 * @source Health and Safety Executive, L23, guidance to the Manual Handling Operations Regulations 1992.
 * @assumes Good grips for all and room to stand.
 * @example teamCapability([25, 25]) // => 33.3
 */
export function teamCapability(capabilities: readonly number[]): Kilograms {
  const team = capabilities.toSorted((a, b) => a - b).slice(0, 3);
  const share = [0, 1, 2 / 3, 1 / 2][team.length] ?? 0;
  return kilograms(share * team.reduce((sum, capability) => sum + capability, 0));
}

/**
 * Screening filter by height and reach.
 *
 * Formula: table
 *
 * @param zone - Height of the hands. [–]
 * @param reach - `close` to the body or `far`. [–]
 * @param persons - `men` or `women`, as the table has it; take `women` where the crew is not known. [–]
 * @returns Mass below which no detailed assessment is asked for. [kg]
 * @source Health and Safety Executive, L23 and INDG143.
 * @assumes Up to about 30 lifts an hour; a filter, not a limit.
 * @example filterMass({ zone: 'elbow to knuckle', reach: 'close', persons: 'women' }) // => 16
 */
export function filterMass({
  zone,
  reach,
  persons,
}: {
  readonly zone: keyof typeof LIFTING_FILTER;
  readonly reach: 'close' | 'far';
  readonly persons: 'men' | 'women';
}): Kilograms {
  return kilograms(LIFTING_FILTER[zone][persons][reach]);
}

/**
 * Share of the filter's mass that is left when lifts follow each other quickly.
 *
 * Formula: table; between its rows the harder one
 *
 * @param perMinute - Lifts of one person in a minute. [1/min] range 0…100
 * @returns Share of the filter's mass. [1]
 * @source Health and Safety Executive, L23: 30 % less at one or two a minute, 50 % at five to eight, 80 % above twelve.
 * @assumes The pace is the person's own, with pauses.
 * @example filterShare(1.5) // => 0.7
 */
export function filterShare(perMinute: number): number {
  return FILTER_SHARES.find(([upTo]) => perMinute <= upTo)?.[1] ?? 0;
}

/** A two-handed lift as the revised equation sees it. */
export interface Lift {
  /** Hands in front of the ankles' middle. */
  readonly horizontal: Metres;
  /** Hands above the floor. */
  readonly vertical: Metres;
  readonly travel: Metres;
  readonly twist: Degrees;
  readonly perMinute: number;
  readonly duration: Seconds;
  readonly coupling: keyof typeof COUPLING_MULTIPLIERS;
  /** Anything that puts the lift outside the equation: one-handed, seated or kneeling, cramped, unstable load, carrying … */
  readonly outside: readonly string[];
}

/**
 * Recommended weight limit of a lift.
 *
 * Formula: RWL = 23·(25/H)·(1 − 0.003·|V − 75|)·(0.82 + 4.5/D)·(1 − 0.0032·A)·FM·CM, lengths in cm
 *
 * @param lift - Places of the hands, travel, twist, frequency, duration and grip. [m, °, 1/min, s] range as the manual clamps it
 * @returns The limit, or why the equation does not speak of this lift. [kg]
 * @source DHHS (NIOSH) 94-110, Applications Manual for the Revised NIOSH Lifting Equation, Rev. 9/2021.
 * @assumes Two hands, smooth, good footing, 19 to 26 °C.
 * @example recommendedWeight({ horizontal: metres(0.25), vertical: metres(0.75), travel: metres(0.25), twist: degrees(0), perMinute: 0.2, duration: seconds(3600), coupling: 'good', outside: [] }) // => { ok: true, value: 23 }
 */
export function recommendedWeight(lift: Lift): Result<Kilograms> {
  const [why] = lift.outside;
  if (why !== undefined) return outsideScope(why);
  if (lift.duration > 8 * 3600) return outsideScope(OUTSIDE_LIFTING_EQUATION.long);
  return ok(kilograms(23 * multiplier(lift)));
}

export interface LiftingIndex {
  readonly limit: Kilograms;
  readonly index: number;
}

/**
 * Lifting index: the mass lifted against the recommended weight limit, the lower of origin and destination.
 *
 * Formula: LI = L/RWL
 *
 * @param mass - What is lifted. [kg] range 0…1000
 * @param lift - The lift at its origin. [m, °, 1/min, s] range as recommendedWeight
 * @param destination - Hands at the end, where the load is set down with care and not dropped. [m] range as recommendedWeight
 * @returns Limit and index, or why the equation does not speak of this lift. [kg, 1]
 * @source DHHS (NIOSH) 94-110, Applications Manual for the Revised NIOSH Lifting Equation, Rev. 9/2021, sections 1.2 and 2.2.
 * @assumes As recommendedWeight; frequency counts at the origin, the grip at each end for itself.
 * @example liftingIndex({ mass: kilograms(23), lift: { horizontal: metres(0.25), vertical: metres(0.75), travel: metres(0.25), twist: degrees(0), perMinute: 0.2, duration: seconds(3600), coupling: 'good', outside: [] }, destination: { horizontal: metres(0.25), vertical: metres(0.75) } }) // => { ok: true, value: { limit: 23, index: 1 } }
 */
export function liftingIndex({
  mass,
  lift,
  destination,
}: {
  readonly mass: Kilograms;
  readonly lift: Lift;
  readonly destination: Pick<Lift, 'horizontal' | 'vertical'>;
}): Result<LiftingIndex> {
  const origin = recommendedWeight(lift);
  if (!origin.ok) return origin;
  const end = 23 * placeMultiplier({ ...lift, ...destination }) * frequencyMultiplier(lift);
  const limit = Math.min(origin.value, end);
  if (limit <= 0) return outsideScope(OUTSIDE_LIFTING_EQUATION.pace);
  return ok({ limit: kilograms(limit), index: mass / limit });
}

function outsideScope(why: string): Result<never> {
  return failed({
    code: 'lifting-equation-outside-scope',
    sentence: `The lifting equation does not speak of this lift (${why}); have a competent person assess it.`,
  });
}

function multiplier(lift: Lift): number {
  return placeMultiplier(lift) * frequencyMultiplier(lift);
}

function placeMultiplier(lift: Lift): number {
  const horizontal = Math.max(25, lift.horizontal * 100);
  const vertical = lift.vertical * 100;
  const travel = Math.max(25, lift.travel * 100);
  if (horizontal > 63 || vertical > 175 || travel > 175 || lift.twist > 135) return 0;
  const geometry =
    (25 / horizontal) * (1 - 0.003 * Math.abs(vertical - 75)) * (0.82 + 4.5 / travel) * (1 - 0.0032 * lift.twist);
  const grip = COUPLING_MULTIPLIERS[lift.coupling][vertical < 75 ? 0 : 1];
  return geometry * grip;
}

function frequencyMultiplier(lift: Lift): number {
  if (lift.perMinute > 15) return 0;
  const hours = lift.duration / 3600;
  const column = (hours <= 1 ? 1 : hours <= 2 ? 3 : 5) + (lift.vertical < 0.75 ? 0 : 1);
  const points = FREQUENCY_MULTIPLIERS.map<Point>((row) => [row[0], row[column] ?? 0]);
  return between({ points, x: lift.perMinute });
}
