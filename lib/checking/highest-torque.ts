/*
 * The highest torque that a chain can bring to the valve: at stall, and with its limiter at the ceiling that the assembly prints.
 * Invariant: efficiencies at their highest, errors upward, the strongest gear: nothing that can happen is higher.
 * Not here: what the chain surely gives (check-figures.ts).
 * Read next: check-settings.ts.
 */
import type { Direction } from '#lib/duty/duty.ts';
import { DIRECTIONS } from '#lib/duty/duty.ts';
import type { LimiterSetting } from '#lib/equipment/assembly.ts';
import type { Subject } from './chain.ts';
import { supplyOf } from './supply.ts';

/** Strongest gear at the highest pressure that the drive may get. */
export function stallAtDrive(subject: Subject): number {
  const { gears } = subject.chain.drive.facts;
  return Math.max(...gears.map((gear) => gear.stallTorque)) * supplyOf(subject).highest.torque;
}

export function stallAtValve(subject: Subject): number {
  return stallAtDrive(subject) * subject.chain.factor.high;
}

/** Settings of one direction that are there. */
export function settingsOf(subject: Subject, direction: Direction): readonly LimiterSetting[] {
  const { unseat, run, seat } = subject.assembly[direction];
  return [unseat, run, seat].filter((setting) => setting !== null);
}

export function highestIn(subject: Subject, direction: Direction): number {
  const { limiter } = subject.chain;
  const ceilings = settingsOf(subject, direction).map((setting) => setting.ceiling);
  const stall = stallAtValve(subject);
  const limits = limiter !== null && (limiter.bothDirections || direction === 'opening') && ceilings.length > 0;
  if (!limits) return stall;
  return Math.min(stall, (Math.max(...ceilings) * (1 + limiter.error) + limiter.overshoot) * limiter.factor.high);
}

export function highestAtValve(subject: Subject): number {
  return Math.max(...DIRECTIONS.map((direction) => highestIn(subject, direction)));
}

/** Required where stall passes never-exceed, and where never-exceed is only a guess. */
export function needsLimiter(subject: Subject): boolean {
  const stall = stallAtValve(subject);
  return DIRECTIONS.some((direction) => {
    const { torque } = subject.lineDuty.duty[direction].neverExceed;
    return stall > torque.low || torque.basis === 'rule of thumb' || torque.basis === 'assumed';
  });
}
