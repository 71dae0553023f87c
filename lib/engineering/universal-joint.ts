/*
 * A universal joint at an angle: speed ripple, torque peak, and the angle that a ripple allows.
 * Invariant: a straight joint changes nothing; a larger angle never ripples less.
 * Not here: a joint's own angle limit and rating (its model's facts).
 * Read next: extension-shaft.ts.
 */

import { invariant } from '#lib/kernel/invariant.ts';
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
 * Torque factor of a chain behind a joint, which rises and falls twice in each turn.
 *
 * Formula: k_low' = k_low·cos α, k_high' = k_high/cos α
 *
 * @param factor - Torque factor up to the joint, lowest and highest. [1] range above 0
 * @param angle - Angle of the joint. [°] range 0…60
 * @returns Lowest and highest torque factor behind the joint. [1]
 * @source T1·ω1 = T2·ω2 with the speeds of R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 9, Example 9.5.
 * @assumes Steady torque before the joint, no friction in it, one joint; a pair that is in phase at equal angles ripples less.
 * @example throughJoint({ factor: { low: ratio(3.2), high: ratio(3.6) }, angle: degrees(25) }).high // => 3.972
 */
export function throughJoint({ factor, angle }: { readonly factor: Range<'1'>; readonly angle: Degrees }): Range<'1'> {
  const cosine = Math.cos(angle * RADIAN);
  invariant(cosine > 0, 'A joint at a right angle turns nothing.');
  return { low: ratio(factor.low * cosine), high: ratio(factor.high / cosine) };
}

/**
 * Speed ratio of two joints in a row at a position of the first driving fork.
 *
 * Formula: ω3/ω1 = r(α1, θ)·r(α2, θ2 + φ), tan θ2 = tan θ/cos α1; φ = 90° in phase, 0° a quarter turn out
 *
 * @param angles - Angle of the first and of the second joint, all three shafts in one plane. [°] range 0…45
 * @param phase - `in phase` when the forks of the middle shaft lie in one plane; `out of phase` a quarter turn off. [–]
 * @param rotation - Position of the first driving fork. [°] range any
 * @returns Speed behind both over speed before them. [1]
 * @source Two Hooke joints in series: R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 9, double Hooke's joint.
 * @assumes No play and no wind-up in the middle shaft.
 * @example jointPairRatioAt({ angles: { first: degrees(20), second: degrees(20) }, phase: 'out of phase', rotation: degrees(0) }) // => 1.132
 */
export function jointPairRatioAt({
  angles,
  phase,
  rotation,
}: {
  readonly angles: { readonly first: Degrees; readonly second: Degrees };
  readonly phase: 'in phase' | 'out of phase';
  readonly rotation: Degrees;
}): Ratio {
  const theta = rotation * RADIAN;
  const middle = Math.atan2(Math.sin(theta), Math.cos(theta) * Math.cos(angles.first * RADIAN)) / RADIAN;
  const second = degrees(middle + (phase === 'in phase' ? 90 : 0));
  return ratio(
    jointRatioAt({ angle: angles.first, rotation }) * jointRatioAt({ angle: angles.second, rotation: second }),
  );
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
