/*
 * What a handwheel bears before rim, spokes or hub give way.
 * Invariant: one total tangential force at the rim; worn and cast-iron wheels bear the least.
 * Not here: what a person pulls (hand-force.ts).
 * Read next: hand-force.ts.
 */
import {
  type Metres,
  type NewtonMetres,
  type Newtons,
  newtonMetres,
  newtons,
  type Pascals,
  type Ratio,
} from '#lib/units/quantity.ts';

/** Total pull at the rim that a wheel must stand: 200 lbf by AWWA C504, from memory. */
export const OVERLOAD_PULL = newtons(890);

/**
 * Torque that a wheel bears by the overload pull at its rim.
 *
 * Formula: T = F·D/2·k
 *
 * @param overload - Total tangential force at the rim that the wheel must stand. [N] range 100…1e4
 * @param wheelDiameter - Diameter of the wheel. [m] range 0.03…3
 * @param strength - Strength against a plain cast wheel. [1] range 0.2…3
 * @returns Torque. [N·m]
 * @source AWWA C504 (200 lbf pull on the handwheel), from memory; factor for materials common practice, no source.
 * @assumes One total force at the rim; sound spokes.
 * @example wheelTorque({ overload: newtons(890), wheelDiameter: metres(0.4), strength: ratio(1) }) // => 178
 */
export function wheelTorque({
  overload,
  wheelDiameter,
  strength,
}: {
  readonly overload: Newtons;
  readonly wheelDiameter: Metres;
  readonly strength: Ratio;
}): NewtonMetres {
  return newtonMetres(((overload * wheelDiameter) / 2) * strength);
}

/**
 * Torque that the driven spokes of a wheel bear, held by hub and rim.
 *
 * Formula: T = 2·n·σ·(π·d³/32)·R/(R − r)
 *
 * @param spokes - Spokes that are driven. [1] range 1…12
 * @param stress - Bending stress allowed. [Pa] range 1e6…5e8
 * @param spokeDiameter - Diameter of a spoke near the hub. [m] range 0.004…0.1
 * @param contactRadius - Where the driver touches the spoke. [m] range 0.02…1
 * @param hubRadius - Outside radius of the hub. [m] range 0.005…0.3
 * @returns Torque. [N·m]
 * @source Statics of a beam held at both ends; Shigley's Mechanical Engineering Design, section 3-10.
 * @assumes Round spokes that share alike; the rim keeps their outer ends from turning.
 * @example spokeTorque({ spokes: ratio(4), stress: pascals(40e6), spokeDiameter: millimetres(20), contactRadius: millimetres(150), hubRadius: millimetres(35) }) // => 327.8
 */
export function spokeTorque({
  spokes,
  stress,
  spokeDiameter,
  contactRadius,
  hubRadius,
}: {
  readonly spokes: Ratio;
  readonly stress: Pascals;
  readonly spokeDiameter: Metres;
  readonly contactRadius: Metres;
  readonly hubRadius: Metres;
}): NewtonMetres {
  const moment = (stress * Math.PI * spokeDiameter ** 3) / 32;
  return newtonMetres((2 * spokes * moment * contactRadius) / Math.max(contactRadius - hubRadius, 0.001));
}
