/*
 * Compressed air on its way to the tool: what hose and couplings take, and what the motor gives at the pressure left.
 * Invariant: a longer or thinner hose never leaves more pressure; less pressure never gives more torque.
 * Not here: whether the site's supply suffices (rules) and the drive's own curve (torque-speed.ts).
 * Read next: torque-speed.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import {
  type Celsius,
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Metres,
  type Pascals,
  pascals,
  type Ratio,
  ratio,
} from '#lib/units/quantity.ts';
import { between, type Point } from './straight-lines.ts';

/** Standard atmosphere, ISO 2533. */
const ATMOSPHERE_PA = 101_325;
/** Exact or defined conversions of the formula's customary units (NIST SP 811). */
const PSI_PA = 6894.757;
const FOOT_M = 0.3048;
const INCH_M = 0.0254;
const CFM_M3_PER_S = 0.000_471_947_4;
/** The pressure that the textbook formula and air-flow examples take for one atmosphere, in psi. */
const TEXTBOOK_ATMOSPHERE_PSI = 14.7;

/**
 * Pressure lost in an air hose or pipe.
 *
 * Formula: Δp[psi] = 0.1025·L[ft]·(Q[cfm]/60)²/(CR·d[in]^5.31), CR = (p + 14.7)/14.7
 *
 * @param length - Length with the equivalent length of fittings. [m] range 0…500
 * @param bore - Inside diameter. [m] range above 0…0.1
 * @param freeAir - Flow as free air. [m³/s] range 0…1
 * @param pressure - Gauge pressure where the hose begins. [Pa] range 0…2e6
 * @returns Pressure lost. [Pa]
 * @source J. Sullivan, Fluid Power: Theory and Applications, 4th ed., Examples 16.1 and 16.2.
 * @assumes The loss is small beside the pressure; smooth bore as the formula's steel pipe.
 * @example hoseLoss({ length: metres(15), bore: millimetres(13), freeAir: cubicMetresPerSecond(0.02), pressure: bar(6.3) }) // => 84261
 */
export function hoseLoss({
  length,
  bore,
  freeAir,
  pressure,
}: {
  readonly length: Metres;
  readonly bore: Metres;
  readonly freeAir: CubicMetresPerSecond;
  readonly pressure: Pascals;
}): Pascals {
  invariant(bore > 0, 'A hose has a bore.');
  const compression = (pressure / PSI_PA + TEXTBOOK_ATMOSPHERE_PSI) / TEXTBOOK_ATMOSPHERE_PSI;
  const flow = freeAir / CFM_M3_PER_S / 60;
  const loss = (0.1025 * (length / FOOT_M) * flow ** 2) / (compression * (bore / INCH_M) ** 5.31);
  return pascals(loss * PSI_PA);
}

/**
 * Gauge pressure left at the tool behind hose and couplings.
 *
 * Formula: p_tool = p − Δp(L + c·100·d)
 *
 * @param supplyPressure - Gauge pressure at the point of supply. [Pa] range 0…2e6
 * @param length - Hose from the supply to the tool. [m] range 0…500
 * @param bore - Inside diameter of the hose. [m] range above 0…0.1
 * @param couplings - Couplings and the filter unit between, each counted as 100 bores of hose. [1] range 0…20
 * @param freeAir - Flow that the tool takes, as free air. [m³/s] range 0…1
 * @returns Gauge pressure at the tool, never below 0. [Pa]
 * @source Hose loss as in hoseLoss; 100 bores a coupling is common practice, no source.
 * @assumes All hoses have the same bore.
 * @example pressureAtTool({ supplyPressure: bar(7), length: metres(15), bore: millimetres(19), couplings: 3, freeAir: cubicMetresPerSecond(0.02) }) // => 685853
 */
export function pressureAtTool({
  supplyPressure,
  length,
  bore,
  couplings,
  freeAir,
}: {
  readonly supplyPressure: Pascals;
  readonly length: Metres;
  readonly bore: Metres;
  readonly couplings: number;
  readonly freeAir: CubicMetresPerSecond;
}): Pascals {
  const equivalent = (length + couplings * 100 * bore) as Metres;
  const loss = hoseLoss({ length: equivalent, bore, freeAir, pressure: supplyPressure });
  return pascals(Math.max(0, supplyPressure - loss));
}

/** Factors relative to a motor at 6.3 bar gauge at its inlet. */
export interface AirMotorFactors {
  readonly power: Ratio;
  readonly speed: Ratio;
  readonly torque: Ratio;
  readonly air: Ratio;
}

/** An air-motor guide's table, by gauge pressure in bar; source of all four columns: see airMotorFactors. */
const POWER_BY_BAR: readonly Point[] = [
  [3, 0.33],
  [4, 0.51],
  [5, 0.71],
  [6, 0.94],
  [6.3, 1],
  [7, 1.13],
];
const SPEED_BY_BAR: readonly Point[] = [
  [3, 0.73],
  [4, 0.85],
  [5, 0.93],
  [6, 0.99],
  [6.3, 1],
  [7, 1.01],
];
const TORQUE_BY_BAR: readonly Point[] = [
  [3, 0.48],
  [4, 0.63],
  [5, 0.79],
  [6, 0.95],
  [6.3, 1],
  [7, 1.09],
];
const AIR_BY_BAR: readonly Point[] = [
  [3, 0.44],
  [4, 0.61],
  [5, 0.77],
  [6, 0.96],
  [6.3, 1],
  [7, 1.11],
];

/**
 * What an air motor gives at a pressure, relative to 6.3 bar gauge.
 *
 * Formula: straight lines between the table's points 3, 4, 5, 6, 6.3 and 7 bar gauge
 *
 * @param pressure - Gauge pressure at the motor's inlet. [Pa] range 3e5…7e5
 * @returns Factors on power, speed, torque and air, or null below 3 bar where the table ends; 7 bar's above it. [1]
 * @source Correction table of a public technical guide to industrial air motors, "Methods of modifying the motor performance".
 * @assumes The maker's figures were taken at 6.3 bar; divide by the factor at the rated pressure where they were not.
 * @example airMotorFactors(bar(5))?.torque // => 0.79
 */
export function airMotorFactors(pressure: Pascals): AirMotorFactors | null {
  const x = pressure / 1e5;
  if (x < 3 - 1e-9) return null;
  return {
    power: ratio(between({ points: POWER_BY_BAR, x })),
    speed: ratio(between({ points: SPEED_BY_BAR, x })),
    torque: ratio(between({ points: TORQUE_BY_BAR, x })),
    air: ratio(between({ points: AIR_BY_BAR, x })),
  };
}

/**
 * How much more than its plate says an air motor gives at the highest pressure that it may get.
 *
 * Formula: k = k(p_high)/k(p_rated) from the table, torque above 7 bar in proportion to gauge pressure; never below 1
 *
 * @param ratedPressure - Gauge pressure of the plate's figures. [Pa] range 3e5…7e5
 * @param highestPressure - Highest gauge pressure at the motor. [Pa] range 0…1.6e6
 * @returns Factors on stall torque and on free speed. [1]
 * @source The table of airMotorFactors; above it proportion to gauge pressure, common practice, no source.
 * @assumes At stall nothing flows, so that the motor gets all of the supply's pressure.
 * @example highestAirFactors({ ratedPressure: bar(6), highestPressure: bar(7) }).torque // => 1.147
 */
export function highestAirFactors({
  ratedPressure,
  highestPressure,
}: {
  readonly ratedPressure: Pascals;
  readonly highestPressure: Pascals;
}): { readonly torque: Ratio; readonly speed: Ratio } {
  const rated = airMotorFactors(ratedPressure);
  const high = airMotorFactors(highestPressure);
  if (rated === null || high === null)
    return { torque: ratio(Math.max(1, highestPressure / ratedPressure)), speed: ratio(1) };
  const beyond = Math.max(1, highestPressure / 7e5);
  return {
    torque: ratio(Math.max(1, (high.torque / rated.torque) * beyond)),
    speed: ratio(Math.max(1, high.speed / rated.speed)),
  };
}

/**
 * Free air taken at another pressure.
 *
 * Formula: Q2 = Q1·(p2 + p_atm)/(p1 + p_atm)
 *
 * @param freeAir - Free air at the rated pressure. [m³/s] range 0…1
 * @param ratedPressure - Gauge pressure of that figure. [Pa] range above 0
 * @param pressure - Gauge pressure at the tool. [Pa] range 0…2e6
 * @returns Free air at that pressure. [m³/s]
 * @source Choked flow goes with absolute pressure: ideal-gas scaling.
 * @assumes Choked flow through the motor at both pressures.
 * @example airTaken({ freeAir: cubicMetresPerSecond(0.04), ratedPressure: bar(6.3), pressure: bar(5) }) // => 0.0329
 */
export function airTaken({
  freeAir,
  ratedPressure,
  pressure,
}: {
  readonly freeAir: CubicMetresPerSecond;
  readonly ratedPressure: Pascals;
  readonly pressure: Pascals;
}): CubicMetresPerSecond {
  return cubicMetresPerSecond((freeAir * (pressure + ATMOSPHERE_PA)) / (ratedPressure + ATMOSPHERE_PA));
}

/**
 * Gauge pressure at a running tool, and the free air that it takes at that pressure.
 *
 * Formula: p = p_supply − Δp(Q(p)), Q(p) = Q_rated·(p + p_atm)/(p_rated + p_atm), solved by halving
 *
 * @param supplyPressure - Gauge pressure at the point of supply. [Pa] range 0…2e6
 * @param length - Hose from the supply to the tool. [m] range 0…500
 * @param bore - Inside diameter of the hose. [m] range above 0…0.1
 * @param couplings - Couplings and the filter unit between, each counted as 100 bores of hose. [1] range 0…20
 * @param consumption - Free air that the tool takes at its rated pressure. [m³/s] range 0…1
 * @param ratedPressure - Gauge pressure of that figure. [Pa] range above 0
 * @returns Gauge pressure at the tool and free air taken. [Pa, m³/s]
 * @source Hose loss as in hoseLoss, flow as in airTaken; both hold at once.
 * @assumes The tool runs free, which takes most air: under load more pressure is left.
 * @example runningAir({ supplyPressure: bar(7), length: metres(15), bore: millimetres(19), couplings: 3, consumption: cubicMetresPerSecond(0.02), ratedPressure: bar(6) }).pressure // => 682336
 */
export function runningAir({
  supplyPressure,
  length,
  bore,
  couplings,
  consumption,
  ratedPressure,
}: {
  readonly supplyPressure: Pascals;
  readonly length: Metres;
  readonly bore: Metres;
  readonly couplings: number;
  readonly consumption: CubicMetresPerSecond;
  readonly ratedPressure: Pascals;
}): { readonly pressure: Pascals; readonly freeAir: CubicMetresPerSecond } {
  const taken = (pressure: number) => airTaken({ freeAir: consumption, ratedPressure, pressure: pascals(pressure) });
  let low = 0;
  let high: number = supplyPressure;
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (pressureAtTool({ supplyPressure, length, bore, couplings, freeAir: taken(middle) }) >= middle) low = middle;
    else high = middle;
  }
  return { pressure: pascals(low), freeAir: taken(low) };
}

/**
 * Free air of a flow that was measured compressed.
 *
 * Formula: Q1 = Q2·(p2 + p_atm)/p_atm·T1/T2
 *
 * @param actualFlow - Flow at pressure. [m³/s] range 0…1
 * @param pressure - Gauge pressure of that flow. [Pa] range 0…2e6
 * @param temperature - Temperature of that flow. [°C] range −40…80
 * @param freeTemperature - Temperature of the free air. [°C] range −40…80
 * @returns The same flow as free air. [m³/s]
 * @source A. Esposito, Fluid Power with Applications, Example 13-6.
 * @assumes Ideal gas.
 * @example freeAirOf({ actualFlow: cubicMetresPerSecond(0.01), pressure: pascals(101325), temperature: celsius(20), freeTemperature: celsius(20) }) // => 0.02
 */
export function freeAirOf({
  actualFlow,
  pressure,
  temperature,
  freeTemperature,
}: {
  readonly actualFlow: CubicMetresPerSecond;
  readonly pressure: Pascals;
  readonly temperature: Celsius;
  readonly freeTemperature: Celsius;
}): CubicMetresPerSecond {
  const warmth = (freeTemperature + 273.15) / (temperature + 273.15);
  return cubicMetresPerSecond(((actualFlow * (pressure + ATMOSPHERE_PA)) / ATMOSPHERE_PA) * warmth);
}

/**
 * Whether a hose needs a device at the supply that cuts the pressure when it fails.
 *
 * Formula: required where the bore exceeds 12.7 mm (1/2 in)
 *
 * @param bore - Inside diameter of the hose. [m] range 0…0.1
 * @returns Whether the device is required; a restraint at every joint is wanted in any case. [–]
 * @source 29 CFR 1926.302(b)(7); other countries' rules may differ.
 * @assumes 12.7 mm itself does not exceed half an inch.
 * @example needsCutOff(millimetres(12.7)) // => false
 */
export function needsCutOff(bore: Metres): boolean {
  return bore > 0.0127 + 1e-9;
}
