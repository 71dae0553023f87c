/*
 * What a petrol engine loses with altitude and heat.
 * Invariant: higher or hotter never gives more power; a factor is never above one in the rules of thumb.
 * Not here: whether petrol is allowed at the place (rules).
 * Read next: torque-speed.ts.
 */
import { type Celsius, type Metres, type Pascals, type Ratio, ratio } from '#lib/units/quantity.ts';

/** Defined: NIST SP 811. */
const FOOT_M = 0.3048;

/**
 * Share of its power that a naturally aspirated engine keeps at an altitude.
 *
 * Formula: k = 1 − 0.03·(h[ft] − 500)/1000, no loss below 500 ft
 *
 * @param altitude - Height above the sea. [m] range −400…5000
 * @returns Share kept, never below 0. [1]
 * @source Field & Solie, Introduction to Agricultural Engineering Technology (rule: 3 % per 1000 ft above 500 ft).
 * @assumes Carburettor set for the altitude.
 * @example altitudeShare(metres(1371.6)) // => 0.88
 */
export function altitudeShare(altitude: Metres): Ratio {
  const above = Math.max(0, altitude / FOOT_M - 500);
  return ratio(Math.max(0, 1 - (0.03 * above) / 1000));
}

/**
 * Share of its power that a petrol engine keeps in hot air.
 *
 * Formula: k = 1 − 0.01·(t[°F] − 85)/10, no loss below 85 °F
 *
 * @param temperature - Air temperature. [°C] range −40…60
 * @returns Share kept. [1]
 * @source Field & Solie, Introduction to Agricultural Engineering Technology (rule: 1 % per 10 °F above 85 °F, spark ignition).
 * @assumes The engine is cooled as its maker wants.
 * @example heatShare(celsius(37.78)) // => 0.985
 */
export function heatShare(temperature: Celsius): Ratio {
  const fahrenheit = temperature * 1.8 + 32;
  return ratio(1 - (0.01 * Math.max(0, fahrenheit - 85)) / 10);
}

/**
 * Correction of a naturally aspirated engine's power to site air, as a check on the rules of thumb.
 *
 * Formula: CF = 1.180·(990/p_d[mbar])·((t + 273)/298)^0.5 − 0.18; P_site = P_rated/CF
 *
 * @param dryPressure - Dry air pressure, absolute. [Pa] range 5e4…1.1e5
 * @param temperature - Air temperature. [°C] range −20…60
 * @returns Correction factor; above 1 where the site gives less. [1]
 * @source SAE J1349, June 1990.
 * @assumes Mechanical efficiency as the standard takes it.
 * @example powerCorrection({ dryPressure: pascals(99000), temperature: celsius(25) }) // => 1
 */
export function powerCorrection({
  dryPressure,
  temperature,
}: {
  readonly dryPressure: Pascals;
  readonly temperature: Celsius;
}): Ratio {
  return ratio(1.18 * (99_000 / dryPressure) * Math.sqrt((temperature + 273) / 298) - 0.18);
}

/**
 * Share of power kept when an engine breathes thinner or warmer air, from its charge alone.
 *
 * Formula: k = (p2/p1)·√(T1/T2)
 *
 * @param pressures - Air pressure, absolute, where it was rated and on site. [Pa] range 5e4…1.1e5
 * @param temperatures - Air temperature where it was rated and on site. [°C] range −40…60
 * @returns Share kept; above 1 in colder air. [1]
 * @source R. K. Rajput, A Textbook of Internal Combustion Engines, Example 7.8.
 * @assumes Volumetric efficiency goes with the root of the temperature.
 * @example chargeShare({ pressures: { rated: pascals(100000), site: pascals(80000) }, temperatures: { rated: celsius(25), site: celsius(25) } }) // => 0.8
 */
export function chargeShare({
  pressures,
  temperatures,
}: {
  readonly pressures: { readonly rated: Pascals; readonly site: Pascals };
  readonly temperatures: { readonly rated: Celsius; readonly site: Celsius };
}): Ratio {
  const warmth = (temperatures.rated + 273.15) / (temperatures.site + 273.15);
  return ratio((pressures.site / pressures.rated) * Math.sqrt(warmth));
}
