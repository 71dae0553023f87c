/*
 * A universal joint at an angle: speed ripple, torque peak, and the angle that a ripple allows.
 * Invariant: a straight joint changes nothing; a larger angle never ripples less.
 * Not here: a joint's own angle limit and rating (its model's facts).
 * Read next: extension-shaft.ts.
 */

import type { Range } from '#lib/units/known-value.ts';
import { type Degrees, degrees, perMinute, type Ratio, type RevolutionsPerMinute, ratio } from '#lib/units/quantity.ts';

const RADIAN = Math.PI / 180;

/**
 * Slowest and fastest speed behind a joint in one turn.
 *
 * Formula: n_min = n·cos α, n_max = n/cos α
 *
 * @param inputSpeed - Steady speed before the joint. [1/min] range 0…5000
 * @param angle - Angle of the joint. [°] range 0…45
 * @returns Slowest and fastest speed. [1/min]
 * @source R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 9, Example 9.5.
 * @assumes One joint; a second one in phase and at the same angle takes the ripple out.
 * @example jointSpeeds({ inputSpeed: perMinute(1200), angle: degrees(16.42) }).high // => 1251
 */
export function jointSpeeds({
  inputSpeed,
  angle,
}: {
  readonly inputSpeed: RevolutionsPerMinute;
  readonly angle: Degrees;
}): Range<'1/min'> {
  const cosine = Math.cos(angle * RADIAN);
  return { low: perMinute(inputSpeed * cosine), high: perMinute(inputSpeed / cosine) };
}

/**
 * Largest angle for a total ripple.
 *
 * Formula: cos α = (√(q² + 4) − q)/2
 *
 * @param ripple - Total ripple allowed. [1] range 0…0.7
 * @returns Angle of the joint. [°]
 * @source R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 9, Example 9.4, solved for the angle.
 * @assumes One joint.
 * @example largestJointAngle(ratio(0.12)) // => 19.64
 */
export function largestJointAngle(ripple: Ratio): Degrees {
  return degrees(Math.acos((Math.sqrt(ripple ** 2 + 4) - ripple) / 2) / RADIAN);
}

/**
 * Speed ratio of a joint at a position of its driving fork.
 *
 * Formula: ω2/ω1 = cos α/(1 − cos²θ·sin²α)
 *
 * @param angle - Angle of the joint. [°] range 0…45
 * @param rotation - Position of the driving fork, 0 where its axis is at right angles to the plane of both shafts. [°] range any
 * @returns Speed behind over speed before the joint. [1]
 * @source R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 9.
 * @assumes One joint.
 * @example jointRatioAt({ angle: degrees(18), rotation: degrees(90) }) // => 0.9511
 */
export function jointRatioAt({ angle, rotation }: { readonly angle: Degrees; readonly rotation: Degrees }): Ratio {
  const alpha = angle * RADIAN;
  return ratio(Math.cos(alpha) / (1 - Math.cos(rotation * RADIAN) ** 2 * Math.sin(alpha) ** 2));
}

/**
 * Position of the driving fork at which both shafts turn at one speed.
 *
 * Formula: cos²θ = (1 − cos α)/sin²α
 *
 * @param angle - Angle of the joint. [°] range above 0…45
 * @returns First such position; the others mirror it. [°]
 * @source R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 9, Example 9.3, recomputed.
 * @assumes One joint.
 * @example evenPosition(degrees(18)) // => 44.28
 */
export function evenPosition(angle: Degrees): Degrees {
  const alpha = angle * RADIAN;
  return degrees(Math.acos(Math.sqrt((1 - Math.cos(alpha)) / Math.sin(alpha) ** 2)) / RADIAN);
}
