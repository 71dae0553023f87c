/*
 * Typed facts of a drive: gears, output, power source, handles, store or consumption.
 * Invariant: stall torque is the highest the drive can give in that gear (full pack, highest air pressure).
 * Not here: heads and what the chain multiplies (engineering, kits).
 * Read next: parts.ts.
 */
import type {
  Celsius,
  CubicMetresPerSecond,
  Decibels,
  Metres,
  MetresPerSecondSquared,
  NewtonMetres,
  Pascals,
  Ratio,
  RevolutionsPerMinute,
  Seconds,
  Volts,
  Watts,
} from '#lib/units/quantity.ts';
import type { Coupling } from './coupling.ts';

export const DUTY_CLASSES = ['light', 'medium', 'heavy'] as const;
export type DutyClass = (typeof DUTY_CLASSES)[number];

export interface Gear {
  readonly name: string;
  readonly stallTorque: NewtonMetres;
  /** Highest torque that the drive may run at for its continuous-run limit. */
  readonly ratedTorque: NewtonMetres;
  readonly freeSpeed: RevolutionsPerMinute;
  /** Torque against speed, from free speed to stall; a straight line when absent. */
  readonly curve?: readonly { readonly torque: NewtonMetres; readonly speed: RevolutionsPerMinute }[];
}

export interface BatteryStore {
  readonly kind: 'battery';
  readonly voltage: Volts;
  readonly capacity_ah: number;
  readonly packsIncluded: number;
  /** Number of the pack model that fits (accessory). */
  readonly packNumber: string;
  readonly efficiency: Ratio;
  readonly rechargeTime: Seconds;
}

export interface AirSupply {
  readonly kind: 'air';
  /** Gauge pressure at the tool for the figures in `gears`. */
  readonly ratedPressure: Pascals;
  readonly lowestPressure: Pascals;
  readonly highestPressure: Pascals;
  /** Free air at rated pressure and free speed. */
  readonly consumption: CubicMetresPerSecond;
  readonly hoseBore: Metres;
}

export interface PetrolStore {
  readonly kind: 'petrol';
  readonly tank_l: number;
  readonly litresPerHour: number;
  readonly ratedPower: Watts;
}

export interface BuiltInLimiter {
  readonly lowest: NewtonMetres;
  readonly highest: NewtonMetres;
  /** Relative error either way, e.g. 0.1. */
  readonly error: Ratio;
  readonly overshoot: NewtonMetres;
  readonly step: NewtonMetres;
  readonly bothDirections: boolean;
}

export interface DriveFacts {
  readonly dutyClass: DutyClass;
  readonly gears: readonly Gear[];
  readonly output: Coupling;
  readonly reversible: boolean;
  readonly holdToRun: boolean;
  readonly continuousRun: Seconds;
  readonly restAfterRun: Seconds;
  readonly soundPressure: Decibels;
  readonly vibration: MetresPerSecondSquared;
  readonly power: BatteryStore | AirSupply | PetrolStore;
  readonly lowestTemperature: Celsius;
  readonly highestTemperature: Celsius;
  readonly highestAltitude: Metres;
  readonly limiter: BuiltInLimiter | null;
}
