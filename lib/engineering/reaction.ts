/*
 * What takes the reaction: torque at the anchor, force in the pull, side load on stem or key, and which way a restraint holds.
 * Invariant: force is compared with force; a shorter arm or a slanting pull never gives a smaller force.
 * Not here: which anchors a place has and forbids (rules), ground plates (ground-plate.ts).
 * Read next: ground-plate.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import {
  type Degrees,
  type Metres,
  type NewtonMetres,
  type Newtons,
  newtonMetres,
  newtons,
  type Ratio,
} from '#lib/units/quantity.ts';

/** Share of the pull that a two-point restraint still leaves on the stem because its sides never pull alike; common practice, no source. */
export const UNEQUAL_SHARE = 0.2;

/**
 * Force in a chain, strap or bar that holds a torque.
 *
 * Formula: F = T/(L·sin θ)
 *
 * @param torque - Torque about the valve's axis. [N·m] range 0…1e6
 * @param arm - Effective length of the reaction arm; take the shortest. [m] range above 0
 * @param pullAngle - Angle between arm and pull. [°] range above 0…90
 * @returns Force in the pull. [N]
 * @source Statics.
 * @assumes A steady torque; the shock factor comes on top.
 * @example reactionForce({ torque: newtonMetres(600), arm: metres(0.6), pullAngle: degrees(60) }) // => 1154.7
 */
export function reactionForce({
  torque,
  arm,
  pullAngle,
}: {
  readonly torque: NewtonMetres;
  readonly arm: Metres;
  readonly pullAngle: Degrees;
}): Newtons {
  const lever = arm * Math.sin((pullAngle * Math.PI) / 180);
  invariant(lever > 0, 'A pull along the arm, or an arm without length, holds nothing.');
  return newtons(torque / lever);
}

/**
 * Highest torque that anchor and side load see.
 *
 * Formula: T = min(T_stall, (S·(1 + e) + o)·k)
 *
 * @param stallAtValve - Highest stall torque about the valve's axis. [N·m] range 0…1e6
 * @param limiter - Highest setting, error, overshoot (own scale) and highest factor to the valve; null without one. [N·m, 1]
 * @returns The smaller of stall and limiter's upper error. [N·m]
 * @source House design.
 * @assumes The limiter trips both ways; where it does not, pass null for the way it does not.
 * @example highestTorque({ stallAtValve: newtonMetres(600), limiter: { ceiling: newtonMetres(100), error: ratio(0.1), overshoot: newtonMetres(5), factorHigh: ratio(3.8) } }) // => 437
 */
export function highestTorque({
  stallAtValve,
  limiter,
}: {
  readonly stallAtValve: NewtonMetres;
  readonly limiter: {
    readonly ceiling: NewtonMetres;
    readonly error: Ratio;
    readonly overshoot: NewtonMetres;
    readonly factorHigh: Ratio;
  } | null;
}): NewtonMetres {
  if (limiter === null) return stallAtValve;
  const limited = (limiter.ceiling * (1 + limiter.error) + limiter.overshoot) * limiter.factorHigh;
  return newtonMetres(Math.min(stallAtValve, limited));
}

/**
 * Side load on stem, key or shaft.
 *
 * Formula: single anchor: F; balanced: 0.2·F
 *
 * @param force - Force in the pull, shock included. [N] range 0…1e6
 * @param anchoring - `single anchor`, or `balanced` for two points or a clamp that makes a couple. [–]
 * @returns Force sideways. [N]
 * @source Statics for a single anchor; the share of a balanced one is common practice, no source.
 * @assumes The arm is in the plane of the wheel or near it.
 * @example sideLoad({ force: newtons(1000), anchoring: 'balanced' }) // => 200
 */
export function sideLoad({
  force,
  anchoring,
}: {
  readonly force: Newtons;
  readonly anchoring: 'single anchor' | 'balanced';
}): Newtons {
  return newtons(anchoring === 'single anchor' ? force : force * UNEQUAL_SHARE);
}

/**
 * Force that an anchor, chain or strap must be good for.
 *
 * Formula: F_needed = k·F
 *
 * @param force - Force in the pull at a steady torque. [N] range 0…1e6
 * @param shock - Factor for a sudden stop against a slack chain. [1] range 1…4
 * @returns Force to compare with the rating. [N]
 * @source A factor of 2 for the shock of a stall is judgement, no source.
 * @assumes The chain is drawn taut before power is given.
 * @example forceWithShock({ force: newtons(1154.7), shock: ratio(2) }) // => 2309
 */
export function forceWithShock({ force, shock }: { readonly force: Newtons; readonly shock: Ratio }): Newtons {
  return newtons(force * shock);
}

/**
 * Whether a second chain or strap is needed.
 *
 * Formula: one way only, and the work goes both ways
 *
 * @param directions - Which ways the restraint holds as it comes. [–]
 * @param work - `both ways` for more than one stroke, freeing to and fro, or a direction to be found out. [–]
 * @returns Whether it must hold the other way too. [–]
 * @source Statics: a chain pulls and does not push.
 * @assumes What is not known of the direction counts as both ways.
 * @example needsSecondChain({ directions: 'one way', work: 'both ways' }) // => true
 */
export function needsSecondChain({
  directions,
  work,
}: {
  readonly directions: 'one way' | 'both ways';
  readonly work: 'one way' | 'both ways';
}): boolean {
  return directions === 'one way' && work === 'both ways';
}
