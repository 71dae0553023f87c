/*
 * Turns the units of catalogue files (mm, bar, min, l/min) into SI and back, without the noise of binary fractions.
 * Invariant: reading and then writing a figure of up to nine significant digits gives the same figure.
 * Not here: which field has which unit (equipment-*.ts), customers' units (lib/units/parse-quantity.ts).
 * Read next: equipment.ts.
 */
import { z } from 'zod';

/** Figures of a catalogue are typed with at most this many significant digits. */
const DIGITS = 9;

/** Drops binary noise: 0.45 · 1000 is 450 again. */
export function tidy(value: number): number {
  return Number(value.toPrecision(DIGITS));
}

export const toMillimetres = (metres: number): number => tidy(metres * 1000);
export const toBar = (pascals: number): number => tidy(pascals / 1e5);
export const toMinutes = (seconds: number): number => tidy(seconds / 60);
/** Free air, m³/s to l/min. */
export const toLitresPerMinute = (flow: number): number => tidy(flow * 60_000);
export const fromLitresPerMinute = (flow: number): number => flow / 60_000;

export const positive = z.number().positive();
export const notNegative = z.number().nonnegative();
/** A relative share such as an efficiency or an error. */
export const share = z.number().min(0).max(1);
export const text = z.string().trim().min(1);

/** A pair in the order low, high. */
export const range = z
  .strictObject({ low: notNegative, high: notNegative })
  .refine((pair) => pair.low <= pair.high, { message: 'low is above high' });
