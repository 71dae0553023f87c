/*
 * Hand-arm vibration of a day as a screening figure: A(8), exposure points, time to a limit.
 * Invariant: points add; 100 points are the action value and 400 the limit value.
 * Not here: who uses what for how long (kits, documents); it is no assessment by a competent person.
 * Read next: noise.ts.
 */
import { type MetresPerSecondSquared, metresPerSecondSquared, type Seconds, seconds } from '#lib/units/quantity.ts';

/** Daily exposure action and limit value, Directive 2002/44/EC, Art. 3. */
export const VIBRATION_ACTION_VALUE = metresPerSecondSquared(2.5);
export const VIBRATION_LIMIT_VALUE = metresPerSecondSquared(5);

const EIGHT_HOURS_S = 28_800;

/** One tool in one pair of hands: trigger time of the day. */
export interface VibrationExposure {
  readonly vibration: MetresPerSecondSquared;
  readonly time: Seconds;
}

/**
 * Daily hand-arm vibration exposure.
 *
 * Formula: A(8) = √(Σ a²·t/T8), T8 = 8 h
 *
 * @param exposures - Vibration total value and trigger time of each tool. [m/s², s] range 0…50, 0…86400
 * @returns A(8). [m/s²]
 * @source Directive 2002/44/EC, Annex A.1 (ISO 5349-1).
 * @assumes Declared values hold for this work; add the maker's uncertainty first.
 * @example dailyVibration([{ vibration: metresPerSecondSquared(5), time: seconds(10800) }]) // => 3.06
 */
export function dailyVibration(exposures: readonly VibrationExposure[]): MetresPerSecondSquared {
  const dose = exposures.reduce((sum, { vibration, time }) => sum + (vibration ** 2 * time) / EIGHT_HOURS_S, 0);
  return metresPerSecondSquared(Math.sqrt(dose));
}

/**
 * Exposure points of a day.
 *
 * Formula: n = Σ 100·(a/2.5)²·t/T8
 *
 * @param exposures - Vibration total value and trigger time of each tool. [m/s², s] range 0…50, 0…86400
 * @returns Points; 100 at the action value, 400 at the limit value. [1]
 * @source Health and Safety Executive, hand-arm vibration ready reckoner.
 * @assumes As dailyVibration.
 * @example vibrationPoints([{ vibration: metresPerSecondSquared(5), time: seconds(10800) }]) // => 150
 */
export function vibrationPoints(exposures: readonly VibrationExposure[]): number {
  return 100 * (dailyVibration(exposures) / VIBRATION_ACTION_VALUE) ** 2;
}

/**
 * Trigger time until a daily value is reached.
 *
 * Formula: t = T8·(limit/a)²
 *
 * @param vibration - Vibration total value at the handle. [m/s²] range above 0
 * @param limit - Daily value, A(8). [m/s²] range above 0
 * @returns Trigger time of the day. [s]
 * @source Directive 2002/44/EC, Annex A.1, solved for the time.
 * @assumes No other exposure that day.
 * @example timeToVibration({ vibration: metresPerSecondSquared(5), limit: VIBRATION_ACTION_VALUE }) // => 7200
 */
export function timeToVibration({
  vibration,
  limit,
}: {
  readonly vibration: MetresPerSecondSquared;
  readonly limit: MetresPerSecondSquared;
}): Seconds {
  return seconds(EIGHT_HOURS_S * (limit / vibration) ** 2);
}
