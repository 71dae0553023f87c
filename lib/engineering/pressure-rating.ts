/*
 * Pressure that a valve's rating stands for: PN, Class and ship K ratings.
 * Invariant: linear between temperatures of one class, never between classes.
 * Not here: what the line really carries.
 * Read next: pressure-rating-table.ts.
 */
import { bar, type Celsius, type Pascals } from '#lib/units/quantity.ts';
import { GROUP_1_1_RATINGS, RATING_CLASSES } from './pressure-rating-table.ts';

/**
 * Working pressure of a carbon-steel valve by class and temperature.
 *
 * Formula: table, linear between temperatures
 *
 * @param ratingClass - Class number, 150 to 2500. [1] range 150…2500
 * @param temperature - Metal temperature; below 38 °C the first row holds. [°C] range −29…425
 * @returns Working pressure, or null where the class or the temperature is not in the table. [Pa]
 * @source ASME B16.34 table 2-1.1A, group 1.1; rows above 300 °C from memory.
 * @assumes Cast or forged carbon steel (A216 WCB, A105).
 * @example classPressure({ ratingClass: 150, temperature: celsius(100) }) // => 1770000
 */
export function classPressure({
  ratingClass,
  temperature,
}: {
  readonly ratingClass: number;
  readonly temperature: Celsius;
}): Pascals | null {
  const column = RATING_CLASSES.indexOf(ratingClass);
  const last = GROUP_1_1_RATINGS.at(-1);
  if (column < 0 || last === undefined || temperature > last[0]) return null;
  const above = GROUP_1_1_RATINGS.findIndex(([celsius]) => celsius >= temperature);
  const upper = GROUP_1_1_RATINGS[above];
  const lower = GROUP_1_1_RATINGS[Math.max(above - 1, 0)];
  if (upper === undefined || lower === undefined) return null;
  const span = upper[0] - lower[0];
  const part = span === 0 ? 0 : Math.max(0, (temperature - lower[0]) / span);
  const from = lower[1][column] ?? 0;
  return bar(from + ((upper[1][column] ?? from) - from) * part);
}

/**
 * Pressure that a rating's text names at ordinary temperature.
 *
 * Formula: PN n: n bar; Class by table at 38 °C, Class 125 iron 200 psi, Class 250 iron 400 psi; nK: n kgf/cm²
 *
 * @param rating - Text such as `PN 16`, `Class 150`, `10K`. [–]
 * @returns Pressure, or null for a text that is no rating. [Pa]
 * @source EN 1333 (PN); ASME B16.34 (Class); ASME B16.1 and JIS B 2220 for iron classes and K, from memory.
 * @assumes Ordinary temperature and the usual material of the rating.
 * @example ratingPressure('PN 16') // => 1600000
 */
export function ratingPressure(rating: string): Pascals | null {
  const pn = /\bPN\s*(\d+(?:[.,]\d+)?)/i.exec(rating)?.[1];
  if (pn !== undefined) return plausible(Number(pn.replace(',', '.')));
  const kgf = /(?:\bK\s*(\d+))|(?:\b(\d+)\s*K\b)/i.exec(rating);
  if (kgf !== null) return plausible(Number(kgf[1] ?? kgf[2]) * 0.980665);
  const text = /(?:class|cl\.?|ansi|#)\s*(\d{2,4})/i.exec(rating)?.[1] ?? /\b(\d{2,4})\s*(?:#|lb)/i.exec(rating)?.[1];
  if (text === undefined) return null;
  const iron = { 125: 13.8, 250: 27.6, 800: 136, 400: 68.1, 4500: 766 }[Number(text)];
  return iron === undefined ? plausible(table(Number(text))) : bar(iron);
}

function table(ratingClass: number): number {
  const column = RATING_CLASSES.indexOf(ratingClass);
  return GROUP_1_1_RATINGS[0]?.[1][column] ?? Number.NaN;
}

function plausible(bars: number): Pascals | null {
  return Number.isFinite(bars) && bars > 0 && bars <= 1000 ? bar(bars) : null;
}
