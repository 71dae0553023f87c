/*
 * How long one stroke takes, with a start, slow ends and working to and fro, and how fast a stroke may be.
 * Invariant: a stroke is never faster than its turns at the running speed; nothing buys speed past a permitted speed.
 * Not here: surge (duty), rests (duty-cycle.ts), set-up (kits).
 * Read next: duty-cycle.ts, energy.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import {
  perMinute,
  type Ratio,
  type RevolutionsPerMinute,
  type Seconds,
  seconds,
  type Turns,
} from '#lib/units/quantity.ts';

/**
 * Time of one stroke.
 *
 * Formula: t = t0 + f·(N − Ns)·60/n + Ns·60/ns, with Ns = min(N, slow turns)
 *
 * @param turns - Turns of the stroke at the valve. [turn] range 0…5000
 * @param speed - Speed at the valve at running torque. [1/min] range above 0
 * @param slowTurns - Turns at both ends together that are done slowly or by hand. [turn] range 0…50
 * @param slowSpeed - Speed over those turns. [1/min] range above 0
 * @param startTime - Taking up slack, trying, starting in steps. [s] range 0…600
 * @param toAndFro - Factor on the powered turns where a stiff valve is worked to and fro; 1 where not. [1] range 1…5
 * @returns Time of the stroke. [s]
 * @source Kinematics; the shares are common practice, no source.
 * @assumes Torque over the middle of the stroke is the running torque.
 * @example strokeTime({ turns: turns(30), speed: perMinute(20), slowTurns: turns(4), slowSpeed: perMinute(10), startTime: seconds(15), toAndFro: ratio(1) }) // => 117
 */
export function strokeTime({
  turns,
  speed,
  slowTurns,
  slowSpeed,
  startTime,
  toAndFro,
}: {
  readonly turns: Turns;
  readonly speed: RevolutionsPerMinute;
  readonly slowTurns: Turns;
  readonly slowSpeed: RevolutionsPerMinute;
  readonly startTime: Seconds;
  readonly toAndFro: Ratio;
}): Seconds {
  invariant(speed > 0 && slowSpeed > 0, 'A stroke takes a speed above nought.');
  const slow = Math.min(turns, slowTurns);
  const slowest = Math.min(speed, slowSpeed);
  return seconds(startTime + (toAndFro * (turns - slow) * 60) / speed + (slow * 60) / slowest);
}

/**
 * Highest speed that a line permits.
 *
 * Formula: n = min(n_max, N·60/t_min)
 *
 * @param maxInputSpeed - Highest speed at the valve's input. [1/min] range above 0
 * @param minStrokeTime - Shortest stroke permitted; null where none is known. [s] range above 0
 * @param turns - Fewest turns that the stroke may have. [turn] range above 0
 * @returns Speed that must not be passed. [1/min]
 * @source Definition.
 * @assumes The whole stroke at one speed; a start and slow ends only lengthen it.
 * @example permittedSpeed({ maxInputSpeed: perMinute(60), minStrokeTime: seconds(90), turns: turns(30) }) // => 20
 */
export function permittedSpeed({
  maxInputSpeed,
  minStrokeTime,
  turns,
}: {
  readonly maxInputSpeed: RevolutionsPerMinute;
  readonly minStrokeTime: Seconds | null;
  readonly turns: Turns;
}): RevolutionsPerMinute {
  if (minStrokeTime === null || minStrokeTime <= 0) return maxInputSpeed;
  return perMinute(Math.min(maxInputSpeed, (turns * 60) / minStrokeTime));
}
