/*
 * Power screws: the torque of a stem in its nut, with collar friction, and its inverse.
 * Invariant: the lead is pitch × starts; a load above zero works against the movement, below zero it helps.
 * Not here: where the load comes from (stem-thrust.ts) and the size of threads (thread-geometry.ts).
 * Read next: thread-geometry.ts.
 */
import {
  type Degrees,
  degrees,
  type Metres,
  type NewtonMetres,
  type Newtons,
  newtonMetres,
  newtons,
  type Ratio,
  ratio,
} from '#lib/units/quantity.ts';

export interface ScrewThread {
  readonly meanDiameter: Metres;
  readonly lead: Metres;
  readonly flankHalfAngle: Degrees;
  readonly friction: Ratio;
}

export interface LoadedThread extends ScrewThread {
  readonly load: Newtons;
}

export interface LoadedStem extends LoadedThread {
  readonly collarFriction: Ratio;
  readonly collarMeanDiameter: Metres;
}

/**
 * Torque in the thread alone.
 *
 * Formula: F ≥ 0: T = F·dm/2 · tan(λ + φ); F < 0: T = |F|·dm/2 · tan(φ − λ); tan λ = l/(π·dm), tan φ = f·sec α
 *
 * @param load - Axial load; below zero it helps the movement. [N] range −5e6…5e6
 * @param meanDiameter - Mean (pitch) diameter of the thread. [m] range 0.005…0.3
 * @param lead - Advance in one turn, pitch × starts. [m] range 0.0005…0.15
 * @param flankHalfAngle - Half the angle between the flanks. [°] range 0…30
 * @param friction - Coefficient of friction in the thread. [1] range 0…0.6
 * @returns Torque; below zero the stem must be held back. [N·m]
 * @source Shigley's Mechanical Engineering Design, section 8-2, eq. 8-1, 8-2 and 8-5.
 * @assumes The same friction on all flanks; α measured in the axial plane.
 * @example threadTorque({ load: newtons(15000), meanDiameter: millimetres(46), lead: millimetres(24), flankHalfAngle: degrees(0), friction: ratio(0.15) }) // => 111.8
 */
export function threadTorque({ load, meanDiameter, lead, flankHalfAngle, friction }: LoadedThread): NewtonMetres {
  const slope = lead / (Math.PI * meanDiameter);
  const grip = friction / Math.cos((flankHalfAngle * Math.PI) / 180);
  const lever = meanDiameter / 2;
  if (load >= 0) return newtonMetres((load * lever * (slope + grip)) / (1 - slope * grip));
  return newtonMetres((-load * lever * (grip - slope)) / (1 + slope * grip));
}

/**
 * Torque lost where a nut or a stem turns against a shoulder under thrust.
 *
 * Formula: T = |F|·fc·dc/2
 *
 * @param load - Axial load on the shoulder. [N] range −5e6…5e6
 * @param collarFriction - Coefficient of friction of the shoulder, or of its rolling bearing. [1] range 0…0.6
 * @param collarMeanDiameter - Mean diameter of the rubbing ring. [m] range 0…0.5
 * @returns Torque lost in the shoulder, whichever way it turns. [N·m]
 * @source Shigley's Mechanical Engineering Design, eq. 8-6.
 * @assumes The load stands on the mean diameter.
 * @example collarTorque({ load: newtons(6400), collarFriction: ratio(0.08), collarMeanDiameter: millimetres(40) }) // => 10.24
 */
export function collarTorque({
  load,
  collarFriction,
  collarMeanDiameter,
}: {
  readonly load: Newtons;
  readonly collarFriction: Ratio;
  readonly collarMeanDiameter: Metres;
}): NewtonMetres {
  return newtonMetres((Math.abs(load) * collarFriction * collarMeanDiameter) / 2);
}

/**
 * Torque that turns a stem against an axial load, thread and collar together.
 *
 * Formula: T = F·dm/2 · (l + π·f·dm·sec α)/(π·dm − f·l·sec α) + |F|·fc·dc/2
 *
 * @param load - Axial load on the stem; below zero it helps the movement. [N] range −5e6…5e6
 * @param meanDiameter - Mean (pitch) diameter of the thread. [m] range 0.005…0.3
 * @param lead - Advance in one turn, pitch × starts. [m] range 0.0005…0.15
 * @param flankHalfAngle - Half the angle between the flanks. [°] range 0…30
 * @param friction - Coefficient of friction in the thread. [1] range 0…0.6
 * @param collarFriction - Coefficient of friction of the collar. [1] range 0…0.6
 * @param collarMeanDiameter - Mean diameter of the collar; 0 where nothing turns against a shoulder. [m] range 0…0.5
 * @returns Torque on the stem or its nut. [N·m]
 * @source Shigley's Mechanical Engineering Design, eq. 8-5 and 8-6.
 * @assumes Thread and collar carry the same load.
 * @example stemTorque({ load: newtons(6400), meanDiameter: millimetres(30), lead: millimetres(8), flankHalfAngle: degrees(0), friction: ratio(0.08), collarFriction: ratio(0.08), collarMeanDiameter: millimetres(40) }) // => 26.18
 */
export function stemTorque({
  load,
  meanDiameter,
  lead,
  flankHalfAngle,
  friction,
  collarFriction,
  collarMeanDiameter,
}: LoadedStem): NewtonMetres {
  const inThread = threadTorque({ load, meanDiameter, lead, flankHalfAngle, friction });
  return newtonMetres(inThread + collarTorque({ load, collarFriction, collarMeanDiameter }));
}

/**
 * Axial load that a torque on the stem can make: the inverse of the stem torque.
 *
 * Formula: F = T / (dm/2 · tan(λ + φ) + fc·dc/2)
 *
 * @param torque - Torque on the stem or its nut. [N·m] range 0…1e5
 * @param meanDiameter - Mean (pitch) diameter of the thread. [m] range 0.005…0.3
 * @param lead - Advance in one turn, pitch × starts. [m] range 0.0005…0.15
 * @param flankHalfAngle - Half the angle between the flanks. [°] range 0…30
 * @param friction - Coefficient of friction in the thread. [1] range 0…0.6
 * @param collarFriction - Coefficient of friction of the collar. [1] range 0…0.6
 * @param collarMeanDiameter - Mean diameter of the collar. [m] range 0…0.5
 * @returns Axial load that works against the movement. [N]
 * @source Shigley's Mechanical Engineering Design, eq. 8-5 and 8-6, solved for the load.
 * @assumes Thread and collar carry the same load; least friction gives the largest load.
 * @example stemLoad({ torque: newtonMetres(18.75), meanDiameter: millimetres(19.5), lead: millimetres(5), flankHalfAngle: degrees(0), friction: ratio(0.15), collarFriction: ratio(0.17), collarMeanDiameter: millimetres(50) }) // => 2869
 */
export function stemLoad({
  torque,
  meanDiameter,
  lead,
  flankHalfAngle,
  friction,
  collarFriction,
  collarMeanDiameter,
}: Omit<LoadedStem, 'load'> & { readonly torque: NewtonMetres }): Newtons {
  const perNewton = stemTorque({
    load: newtons(1),
    meanDiameter,
    lead,
    flankHalfAngle,
    friction,
    collarFriction,
    collarMeanDiameter,
  });
  return newtons(torque / perNewton);
}

/**
 * Share of the work on the stem that becomes work of the load.
 *
 * Formula: η = F·l / (2π·T)
 *
 * @param load - Axial load on the stem. [N] range 0…5e6
 * @param lead - Advance in one turn. [m] range 0.0005…0.15
 * @param torque - Torque on the stem. [N·m] range 0.001…1e5
 * @returns Efficiency of the screw. [1]
 * @source Shigley's Mechanical Engineering Design, eq. 8-4.
 * @assumes Steady turning.
 * @example screwEfficiency({ load: newtons(6400), lead: millimetres(8), torque: newtonMetres(26.18) }) // => 0.3113
 */
export function screwEfficiency({
  load,
  lead,
  torque,
}: {
  readonly load: Newtons;
  readonly lead: Metres;
  readonly torque: NewtonMetres;
}): Ratio {
  return ratio((load * lead) / (2 * Math.PI * torque));
}

/**
 * Angle at which a thread climbs.
 *
 * Formula: λ = atan(l / (π·dm))
 *
 * @param lead - Advance in one turn. [m] range 0.0005…0.15
 * @param meanDiameter - Mean diameter of the thread. [m] range 0.005…0.3
 * @returns Lead angle. [°]
 * @source Shigley's Mechanical Engineering Design, section 8-1.
 * @assumes Measured on the mean diameter.
 * @example leadAngle({ lead: millimetres(8), meanDiameter: millimetres(30) }) // => 4.852
 */
export function leadAngle({ lead, meanDiameter }: { readonly lead: Metres; readonly meanDiameter: Metres }): Degrees {
  return degrees((Math.atan(lead / (Math.PI * meanDiameter)) * 180) / Math.PI);
}

/**
 * Least friction at which a loaded thread holds itself.
 *
 * Formula: f = l·cos α / (π·dm)
 *
 * @param lead - Advance in one turn. [m] range 0.0005…0.15
 * @param meanDiameter - Mean diameter of the thread. [m] range 0.005…0.3
 * @param flankHalfAngle - Half the angle between the flanks. [°] range 0…30
 * @returns Coefficient of friction at and above which the thread is self-locking. [1]
 * @source Shigley's Mechanical Engineering Design, eq. 8-3; Housner & Hudson, Applied Mechanics: Statics, section 5.6.
 * @assumes No vibration: a shaken thread can creep although it is self-locking.
 * @example selfLockingFriction({ lead: millimetres(24), meanDiameter: millimetres(46), flankHalfAngle: degrees(0) }) // => 0.1661
 */
export function selfLockingFriction({ lead, meanDiameter, flankHalfAngle }: Omit<ScrewThread, 'friction'>): Ratio {
  return ratio((lead * Math.cos((flankHalfAngle * Math.PI) / 180)) / (Math.PI * meanDiameter));
}
