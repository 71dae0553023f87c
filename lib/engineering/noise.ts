/*
 * Noise of a day as a screening figure: L_EX,8h, noise points, time to a level.
 * Invariant: 3 dB more halve the time; 100 points are 85 dB over 8 h.
 * Not here: peaks, hearing protection, and the noise limit of a place (rules).
 * Read next: lifting.ts.
 */
import { type Decibels, decibels, type Seconds, seconds } from '#lib/units/quantity.ts';

/** Lower and upper exposure action value and exposure limit value, L_EX,8h in dB(A): Directive 2003/10/EC, Art. 3. */
export const NOISE_LOWER_ACTION = decibels(80);
export const NOISE_UPPER_ACTION = decibels(85);
export const NOISE_LIMIT = decibels(87);

const EIGHT_HOURS_S = 28_800;

export interface NoiseExposure {
  readonly level: Decibels;
  readonly time: Seconds;
}

/**
 * Daily noise exposure level.
 *
 * Formula: L_EX,8h = 10·lg(1/T8·Σ t·10^(L/10)), T8 = 8 h
 *
 * @param exposures - Level at the ear and time of each work. [dB, s] range 0…140, above 0…86400; at least one
 * @returns L_EX,8h in dB(A). [dB]
 * @source Directive 2003/10/EC; Control of Noise at Work Regulations 2005, Schedule 1.
 * @assumes The level at the ear is the declared one; the rest of the day is quiet.
 * @example dailyNoise([{ level: decibels(89), time: seconds(3600) }]) // => 79.97
 */
export function dailyNoise(exposures: readonly NoiseExposure[]): Decibels {
  const dose = exposures.reduce((sum, { level, time }) => sum + (time / EIGHT_HOURS_S) * 10 ** (level / 10), 0);
  return decibels(dose > 1 ? 10 * Math.log10(dose) : 0);
}

/**
 * Noise points of a day.
 *
 * Formula: n = 100·10^((L_EX,8h − 85)/10)
 *
 * @param exposure - Daily exposure level. [dB] range 0…140
 * @returns Points; 100 at 85 dB. [1]
 * @source Health and Safety Executive, noise exposure ready reckoner.
 * @assumes As dailyNoise.
 * @example noisePoints(decibels(88)) // => 199.5
 */
export function noisePoints(exposure: Decibels): number {
  return 100 * 10 ** ((exposure - 85) / 10);
}

/**
 * Time until a daily level is reached.
 *
 * Formula: t = T8·10^((limit − L)/10)
 *
 * @param level - Level at the ear. [dB] range 0…140
 * @param limit - Daily level. [dB] range 0…140
 * @returns Time of the day. [s]
 * @source Health and Safety Executive, HSG260, 1.20 and 1.21.
 * @assumes The rest of the day is quiet; 3 dB exchange rate.
 * @example timeToNoise({ level: decibels(95), limit: NOISE_UPPER_ACTION }) // => 2880
 */
export function timeToNoise({ level, limit }: { readonly level: Decibels; readonly limit: Decibels }): Seconds {
  return seconds(EIGHT_HOURS_S * 10 ** ((limit - level) / 10));
}
