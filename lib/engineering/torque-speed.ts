/*
 * Speed of a drive against the torque asked of it: a straight line or a table of points for each gear.
 * Invariant: more torque never gives more speed; at or above stall the speed is nought.
 * Not here: what changes the curve (air-supply.ts, petrol-derating.ts) and the head after it (chain-torque.ts).
 * Read next: chain-torque.ts, stroke-time.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import {
  type NewtonMetres,
  newtonMetres,
  perMinute,
  type Ratio,
  type RevolutionsPerMinute,
  type Watts,
  watts,
} from '#lib/units/quantity.ts';
import { between, type Point } from './straight-lines.ts';

export interface SpeedPoint {
  readonly torque: NewtonMetres;
  readonly speed: RevolutionsPerMinute;
}

/** A gear of a drive as far as torque and speed go; points from free speed to stall, or a straight line without them. */
export interface TorqueSpeedCurve {
  readonly stallTorque: NewtonMetres;
  readonly freeSpeed: RevolutionsPerMinute;
  readonly curve?: readonly SpeedPoint[];
}

/**
 * Speed of a drive's output at a torque.
 *
 * Formula: n = n0·(1 − T/Ts), or by straight lines between the tabulated points
 *
 * @param gear - Stall torque, free speed and points of the gear. [N·m, 1/min] range above 0
 * @param torque - Torque asked at the drive's output. [N·m] range 0…1e5
 * @returns Speed at that torque; 0 at stall and above. [1/min]
 * @source Linear machine T/Ts + n/n0 = 1: U. A. Bakshi & M. V. Bakshi, DC Machines and Synchronous Machines, Example 2.39.
 * @assumes The store is full or the pressure as rated; derate the gear first where it is not.
 * @example speedAtTorque({ gear: { stallTorque: newtonMetres(200), freeSpeed: perMinute(40) }, torque: newtonMetres(50) }) // => 30
 */
export function speedAtTorque({
  gear,
  torque,
}: {
  readonly gear: TorqueSpeedCurve;
  readonly torque: NewtonMetres;
}): RevolutionsPerMinute {
  invariant(gear.stallTorque > 0 && gear.freeSpeed > 0, 'A gear has a stall torque and a free speed above nought.');
  if (torque >= gear.stallTorque) return perMinute(0);
  if (torque <= 0) return gear.freeSpeed;
  if (gear.curve === undefined) return perMinute(gear.freeSpeed * (1 - torque / gear.stallTorque));
  return perMinute(between({ points: pointsOf(gear, gear.curve), x: torque }));
}

/**
 * Highest mechanical power that a linear machine gives.
 *
 * Formula: P = Ts·ω0/4, at half the free speed and half the stall torque
 *
 * @param gear - Stall torque and free speed of the gear. [N·m, 1/min] range above 0
 * @returns Highest output power. [W]
 * @source Product of a falling straight line with its own abscissa; checked against a published linear-motor exercise.
 * @assumes A straight torque–speed line; a tabulated curve is not looked at.
 * @example highestPower({ stallTorque: newtonMetres(0.8), freeSpeed: perMinute(833.3) }) // => 17.45
 */
export function highestPower(gear: TorqueSpeedCurve): Watts {
  return watts((gear.stallTorque * gear.freeSpeed * 2 * Math.PI) / 60 / 4);
}

/**
 * The same gear when its torque and speed are both changed by a factor (air pressure, altitude, charge).
 *
 * Formula: Ts' = kT·Ts, n0' = kn·n0, every point alike
 *
 * @param gear - Gear as rated. [N·m, 1/min] range above 0
 * @param torqueFactor - Factor on torque. [1] range 0…1.5
 * @param speedFactor - Factor on speed. [1] range 0…1.5
 * @returns The gear under those conditions. [N·m, 1/min]
 * @source Common practice, no source.
 * @assumes The shape of the curve stays the same.
 * @example scaleGear({ gear: { stallTorque: newtonMetres(200), freeSpeed: perMinute(40) }, torqueFactor: ratio(0.79), speedFactor: ratio(0.93) }).stallTorque // => 158
 */
export function scaleGear<G extends TorqueSpeedCurve>({
  gear,
  torqueFactor,
  speedFactor,
}: {
  readonly gear: G;
  readonly torqueFactor: Ratio;
  readonly speedFactor: Ratio;
}): G {
  const scaled = {
    ...gear,
    stallTorque: newtonMetres(gear.stallTorque * torqueFactor),
    freeSpeed: perMinute(gear.freeSpeed * speedFactor),
  };
  if (gear.curve === undefined) return scaled;
  const curve = gear.curve.map((point) => ({
    torque: newtonMetres(point.torque * torqueFactor),
    speed: perMinute(point.speed * speedFactor),
  }));
  return { ...scaled, curve };
}

function pointsOf(gear: TorqueSpeedCurve, curve: readonly SpeedPoint[]): readonly Point[] {
  const inner = curve.filter((point) => point.torque > 0 && point.torque < gear.stallTorque);
  const rising = inner.map<Point>((point) => [point.torque, point.speed]).toSorted((a, b) => a[0] - b[0]);
  return [[0, gear.freeSpeed], ...rising, [gear.stallTorque, 0]];
}
