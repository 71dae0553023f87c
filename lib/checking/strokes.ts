/*
 * Speeds, stroke times, strokes and work of a visit, worked out a second time from gear, head and duty.
 * Invariant: fastest means least torque and best efficiency at a full supply; the printed speed is the likeliest one.
 * Not here: whether they agree with the assembly (check-figures.ts).
 * Read next: check-figures.ts.
 */
import { DIRECTIONS, type Direction } from '#lib/duty/duty.ts';
import { yearsIdle } from '#lib/duty/years-idle.ts';
import type { Gear } from '#lib/equipment/drive.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Subject } from './chain.ts';
import { type Supply, supplyOf } from './supply.ts';

/** Speed of the drive's output at a torque on it: straight lines from free speed over the tabulated points to stall. */
function speedOf({
  gear,
  supply,
  torque,
}: {
  readonly gear: Gear;
  readonly supply: Pick<Supply, 'torque' | 'speed'>;
  readonly torque: number;
}) {
  const stall = gear.stallTorque * supply.torque;
  const free = gear.freeSpeed * supply.speed;
  if (torque >= stall) return 0;
  const tabulated = (gear.curve ?? [])
    .map((point) => ({ torque: point.torque * supply.torque, speed: point.speed * supply.speed }))
    .filter((point) => point.torque > 0 && point.torque < stall);
  const points = [{ torque: 0, speed: free }, ...tabulated, { torque: stall, speed: 0 }].sort(
    (one, other) => one.torque - other.torque,
  );
  const after = points.find((point) => point.torque > torque);
  const before = points.findLast((point) => point.torque <= torque);
  if (after === undefined || before === undefined) return free;
  const along = (torque - before.torque) / (after.torque - before.torque);
  return before.speed + along * (after.speed - before.speed);
}

/** Speeds at wheel or nut; highest pressure, least torque and the joint's quickest moment for the fastest. */
export function speedsOf(subject: Subject, direction: Direction) {
  const { gear, factor, head, ripple } = subject.chain;
  const supply = supplyOf(subject);
  const { running } = subject.lineDuty.duty[direction];
  const torques = { least: running.low / factor.high, likely: (2 * running.nominal) / (factor.low + factor.high) };
  return {
    fastest: speedOf({ gear, supply: supply.highest, torque: torques.least }) / head.facts.ratio / ripple,
    speed: speedOf({ gear, supply, torque: torques.likely }) / head.facts.ratio,
  };
}

/** A valve that is stiff, or was not moved for long, is worked to and fro. */
export function isToAndFro({ lineDuty, site }: Subject): boolean {
  const { line } = lineDuty;
  const idle = yearsIdle({ line, site }) ?? 0;
  return line.state.condition?.value === 'stiff' || idle > WORKING_CONSTANTS.stiffAfterYears;
}

/** 1, or more where a stiff valve is worked to and fro. */
export function toAndFro(subject: Subject): number {
  return isToAndFro(subject) ? WORKING_CONSTANTS.toAndFro : 1;
}

export function strokeTimesOf(subject: Subject, direction: Direction): { readonly low: number; readonly high: number } {
  const { turns } = subject.lineDuty.duty;
  const { slowTurns, slowSpeed, startTime, crawl } = WORKING_CONSTANTS;
  const { fastest, speed } = speedsOf(subject, direction);
  const time = (all: number, at: number, factor: number): number => {
    const real = Math.max(crawl, at);
    const quick = Math.max(0, all - slowTurns);
    return startTime + 60 * ((factor * quick) / real + (all - quick) / Math.min(real, slowSpeed));
  };
  const low = time(turns.low, fastest, 1);
  return { low, high: Math.max(low, time(turns.high, speed, toAndFro(subject))) };
}

/** Sum over the strokes of a visit; a last odd one counts as the dearer direction. */
function overStrokes(strokes: number, of: (direction: Direction) => number): number {
  const [one, other] = DIRECTIONS.map(of);
  const dearer = Math.max(one ?? 0, other ?? 0);
  return strokes % 2 === 0
    ? (strokes / 2) * ((one ?? 0) + (other ?? 0))
    : ((strokes - 1) / 2) * ((one ?? 0) + (other ?? 0)) + dearer;
}

/** All strokes of a visit at their middle time, with the rests of the drive between its runs. [s] */
export function visitTimeOf(subject: Subject): number {
  const { continuousRun, restAfterRun } = subject.chain.drive.facts;
  const running = overStrokes(subject.lineDuty.duty.strokes, (direction) => {
    const { low, high } = strokeTimesOf(subject, direction);
    return (low + high) / 2;
  });
  const runs = Math.max(1, Math.ceil(running / continuousRun - 1e-9));
  return running + (runs - 1) * restAfterRun;
}

/** Work at the valve of a visit at the highest torques: starting falls to running, then runs on. [J] */
export function visitWorkOf(subject: Subject): number {
  const { duty } = subject.lineDuty;
  const falling = Math.min(duty.turns.high, WORKING_CONSTANTS.startingTurns);
  const work = (direction: Direction): number => {
    const { starting, running } = duty[direction];
    const mean = running.high * duty.turns.high + ((starting.high - running.high) * falling) / 2;
    return 2 * Math.PI * mean;
  };
  return toAndFro(subject) * overStrokes(duty.strokes, work);
}

/** Powered turning of a visit at the likeliest turns and speed, without starting and slow ends. [s] */
export function poweredTimeOf(subject: Subject): number {
  const { duty } = subject.lineDuty;
  return overStrokes(duty.strokes, (direction) => {
    const { speed } = speedsOf(subject, direction);
    return (60 * duty.turns.nominal) / Math.max(WORKING_CONSTANTS.crawl, speed);
  });
}
