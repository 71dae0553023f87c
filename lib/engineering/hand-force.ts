/*
 * What a person puts on a wheel, a lever or a key.
 * Invariant: the name says whether one total force acts at the radius or two hands make a couple.
 * Not here: what the wheel itself bears (wheel-strength.ts).
 * Read next: wheel-strength.ts.
 */
import { type Metres, type NewtonMetres, type Newtons, newtonMetres, newtons } from '#lib/units/quantity.ts';

/** API Spec 6D, section 4.12: the most that a wheel or wrench may ask of a person (80 lbf). */
export const HIGHEST_DESIGN_PULL = newtons(360);
/** MSS SP-91, section 2.4: what a person can put on a lever at waist level (150 lbf). */
export const STRONG_PULL = newtons(670);

/**
 * Torque of one total tangential force at the rim of a wheel.
 *
 * Formula: T = F·D/2
 *
 * @param force - Total tangential force at the rim. [N] range 0…1e5
 * @param wheelDiameter - Diameter of the wheel. [m] range 0.03…3
 * @returns Torque. [N·m]
 * @source Statics; API Spec 6D, section 4.12 for the force.
 * @assumes One total force at the radius, not one for each hand.
 * @example rimTorque({ force: newtons(360), wheelDiameter: metres(0.4) }) // => 72
 */
export function rimTorque({
  force,
  wheelDiameter,
}: {
  readonly force: Newtons;
  readonly wheelDiameter: Metres;
}): NewtonMetres {
  return newtonMetres((force * wheelDiameter) / 2);
}

/**
 * Total tangential force at the rim for a torque.
 *
 * Formula: F = T/(D/2)
 *
 * @param torque - Torque on the wheel. [N·m] range 0…1e5
 * @param wheelDiameter - Diameter of the wheel. [m] range 0.03…3
 * @returns Total tangential force. [N]
 * @source Statics.
 * @assumes One total force at the radius.
 * @example rimForce({ torque: newtonMetres(97.227), wheelDiameter: metres(0.5) }) // => 388.9
 */
export function rimForce({
  torque,
  wheelDiameter,
}: {
  readonly torque: NewtonMetres;
  readonly wheelDiameter: Metres;
}): Newtons {
  return newtons(torque / (wheelDiameter / 2));
}

/**
 * Torque of two hands that pull opposite ways, each at the same radius.
 *
 * Formula: T = 2·F·r
 *
 * @param forcePerHand - Force of each hand. [N] range 0…2000
 * @param radius - Distance of each hand from the axis. [m] range 0.02…2
 * @returns Torque of the couple. [N·m]
 * @source Statics.
 * @assumes Both hands pull alike and at right angles to the bar.
 * @example coupleTorque({ forcePerHand: newtons(300), radius: metres(0.45) }) // => 270
 */
export function coupleTorque({
  forcePerHand,
  radius,
}: {
  readonly forcePerHand: Newtons;
  readonly radius: Metres;
}): NewtonMetres {
  return newtonMetres(2 * forcePerHand * radius);
}

/**
 * Torque of a force on a one-armed lever.
 *
 * Formula: T = F·L
 *
 * @param force - Force at the end. [N] range 0…2000
 * @param length - Length from axis to hand. [m] range 0.02…3
 * @returns Torque. [N·m]
 * @source MSS SP-91, section 2.4.
 * @assumes The force acts at right angles to the lever.
 * @example leverTorque({ force: newtons(670), length: metres(0.3) }) // => 201
 */
export function leverTorque({ force, length }: { readonly force: Newtons; readonly length: Metres }): NewtonMetres {
  return newtonMetres(force * length);
}
