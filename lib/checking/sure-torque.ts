/*
 * The torque that a chain surely brings to the valve, worked out a second time: while running, and for the moment of starting.
 * Invariant: lowest efficiency, what the site's supply leaves, the limiter's error downward: what happens is never less.
 * Not here: the highest torque (highest-torque.ts).
 * Read next: check-figures.ts.
 */
import type { Direction } from '#lib/duty/duty.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Subject } from './chain.ts';
import { settingsOf } from './highest-torque.ts';
import { limitsWhile } from './limiter-marks.ts';
import { supplyOf } from './supply.ts';

export function sureWhileRunning(subject: Subject): number {
  const { gear, factor } = subject.chain;
  return gear.ratedTorque * supplyOf(subject).torque * factor.low;
}

/** The drive's share of its stall torque, or the limiter's mark less its error. */
export function sureStart(subject: Subject, direction: Direction): number {
  const { gear, factor, limiter } = subject.chain;
  const start = WORKING_CONSTANTS.startShare * gear.stallTorque * supplyOf(subject).torque * factor.low;
  if (limiter === null || !limitsWhile(limiter, direction)) return start;
  const ceiling = Math.max(0, ...settingsOf(subject, direction).map((setting) => setting.ceiling));
  return Math.min(start, ceiling * (1 - limiter.error) * limiter.factor.low);
}
