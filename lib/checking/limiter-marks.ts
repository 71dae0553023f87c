/*
 * The marks that a limiter must bear for one line and chain, worked out a second time in whole steps of its scale.
 * Invariant: at no mark can more than never-exceed (low), or more than the chain's weakest part carries, reach the valve.
 * Not here: comparing them with the assembly's (check-settings.ts).
 * Read next: check-settings.ts.
 */
import type { Direction } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import type { RestraintModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { PlacedLimiter, Subject } from './chain.ts';
import { stallAtValve } from './highest-torque.ts';

export interface Marks {
  readonly start: number;
  readonly ceiling: number;
}

export type Purpose = 'unseat' | 'run' | 'seat';

/** A part of a step that only binary fractions make. */
const HAIR = 1e-9;
const MARGIN = HOUSE_CONSTANTS.limiterMargin.nominal;

/** Null where the purpose has no mark this way, where nothing limits this way, or where the scale starts too high. */
export function marksOf(
  subject: Subject,
  { direction, purpose }: { readonly direction: Direction; readonly purpose: Purpose },
): Marks | null {
  const { limiter } = subject.chain;
  if (limiter === null || !limitsWhile(limiter, direction)) return null;
  if (purpose === (direction === 'opening' ? 'seat' : 'unseat')) return null;
  if (purpose === 'seat' && stopsByPosition(subject)) return null;
  const { starting, running, neverExceed } = subject.lineDuty.duty[direction];
  const torques = {
    unseat: starting,
    run: direction === 'opening' ? running : { low: Math.min(running.low, starting.low), high: starting.high },
    seat: { low: running.low, high: starting.high },
  };
  const { low, high } = torques[purpose];
  const most = stepsUpTo({ limiter, torque: Math.min(neverExceed.torque.low, weakestPart(subject)) });
  const least = Math.ceil(limiter.lowest / limiter.step - HAIR);
  if (most < least) return null;
  const enough = Math.ceil((high * MARGIN) / ((1 - limiter.error) * limiter.factor.low) / limiter.step - HAIR);
  const ceiling = purpose === 'unseat' ? most : Math.min(most, Math.max(least, enough));
  const start = Math.max(least, Math.floor(low / limiter.factor.high / limiter.step + HAIR));
  return { start: Math.min(start, ceiling) * limiter.step, ceiling: ceiling * limiter.step };
}

/** Quarter-turn valves, worm gearboxes with their stops, and slides that pass their seat are not torqued shut. */
function stopsByPosition({ lineDuty }: Subject): boolean {
  const { valveType, torque } = lineDuty.line;
  const types = ['ball', 'butterfly', 'knife gate', 'parallel slide gate', 'penstock', 'plug'];
  return torque.gearbox?.value === 'worm' || types.includes(valveType?.value ?? '');
}

export function limitsWhile(limiter: PlacedLimiter, direction: Direction): boolean {
  return limiter.bothDirections || direction === 'opening';
}

/** The highest setting, on a scale without end, that keeps the valve below never-exceed; nought where the scale starts above. */
export function allowedByValve(subject: Subject, direction: Direction): number {
  const { limiter } = subject.chain;
  if (limiter === null) return 0;
  const torque = subject.lineDuty.duty[direction].neverExceed.torque.low;
  const steps = stepsUpTo({ limiter: { ...limiter, highest: Number.POSITIVE_INFINITY }, torque });
  return steps * limiter.step < limiter.lowest - HAIR ? 0 : steps * limiter.step;
}

function stepsUpTo(at: {
  readonly limiter: Pick<PlacedLimiter, 'factor' | 'overshoot' | 'error' | 'step'> & { readonly highest: number };
  readonly torque: number;
}): number {
  const { factor, overshoot, error, step, highest } = at.limiter;
  return Math.floor(Math.min(highest, (at.torque / factor.high - overshoot) / (1 + error)) / step + HAIR);
}

/** Torque at which a plate on the ground turns under its least weight: friction at the mean distance of a square's points from its middle. */
export function slipOf({ facts }: RestraintModel): number {
  if (facts.kind !== 'ground plate') return Number.POSITIVE_INFINITY;
  const meanDistance = ((facts.plateSide ?? 0) * (Math.SQRT2 + Math.asinh(1))) / 6;
  const weight = (facts.weightOnPlate ?? 0) * 9.80665;
  return Math.min(facts.torqueRating, WORKING_CONSTANTS.plateFriction * weight * meanDistance);
}

/** Lowest rating along the chain; of the restraint, the torque whose pull with shock is its force rating. What even the stall does not overload binds no limiter. */
function weakestPart(subject: Subject): number {
  const { chain } = subject;
  const { arm, forceRating, sideLoad } = chain.restraint.facts;
  const lever =
    (sideLoad === 'single anchor' ? 1 : 2) * arm.low * Math.sin((WORKING_CONSTANTS.pullAngle / 180) * Math.PI);
  const behind = chain.links.flatMap((link) => [link.adapter, ...link.extensions]);
  const ratings = [chain.head, ...behind].map((part) => part.facts.torqueRating);
  const weakest = Math.min(...ratings, (forceRating * lever) / WORKING_CONSTANTS.shock, slipOf(chain.restraint));
  return weakest < stallAtValve(subject) ? weakest : Number.POSITIVE_INFINITY;
}
