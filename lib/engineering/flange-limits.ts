/*
 * What the mounting flange of a gearbox or actuator may transmit.
 * Invariant: a flange bounds what may pass; it says nothing of what is needed, nor of an end stop.
 * Not here: bolts, spigots and the drive that sits in the flange.
 * Read next: gear-reduction.ts.
 */
import { type NewtonMetres, type Newtons, newtonMetres, newtons } from '#lib/units/quantity.ts';

/** ISO 5211:2017, table 1: largest torque of a part-turn flange in N·m; values from memory. */
export const PART_TURN_FLANGES: Readonly<Record<string, number>> = {
  F03: 32,
  F04: 63,
  F05: 125,
  F07: 250,
  F10: 500,
  F12: 1000,
  F14: 2000,
  F16: 4000,
  F25: 8000,
  F30: 16_000,
  F35: 32_000,
  F40: 63_000,
  F48: 125_000,
  F60: 250_000,
};

/** ISO 5210:2017, table 1: largest torque in N·m and thrust in N of a multi-turn flange; values from memory. */
export const MULTI_TURN_FLANGES: Readonly<Record<string, { readonly torque_nm: number; readonly thrust_n: number }>> = {
  F07: { torque_nm: 40, thrust_n: 20_000 },
  F10: { torque_nm: 100, thrust_n: 40_000 },
  F14: { torque_nm: 400, thrust_n: 100_000 },
  F16: { torque_nm: 700, thrust_n: 150_000 },
  F25: { torque_nm: 1200, thrust_n: 200_000 },
  F30: { torque_nm: 2500, thrust_n: 325_000 },
  F35: { torque_nm: 5000, thrust_n: 700_000 },
  F40: { torque_nm: 10_000, thrust_n: 1_100_000 },
};

/**
 * Largest torque through a part-turn flange.
 *
 * Formula: table
 *
 * @param flange - Flange name, e.g. F14. [–]
 * @returns Torque, or null for a name that is not in the table. [N·m]
 * @source ISO 5211:2017, table 1, values from memory.
 * @assumes Bolts of the grade and friction that the standard names.
 * @example partTurnFlangeTorque('F14') // => 2000
 */
export function partTurnFlangeTorque(flange: string): NewtonMetres | null {
  const torque = PART_TURN_FLANGES[flangeName(flange)];
  return torque === undefined ? null : newtonMetres(torque);
}

/**
 * Largest torque through a multi-turn flange.
 *
 * Formula: table
 *
 * @param flange - Flange name, e.g. F14. [–]
 * @returns Torque, or null for a name that is not in the table. [N·m]
 * @source ISO 5210:2017, table 1, values from memory.
 * @assumes Bolts of the grade and friction that the standard names.
 * @example multiTurnFlangeTorque('F14') // => 400
 */
export function multiTurnFlangeTorque(flange: string): NewtonMetres | null {
  const row = MULTI_TURN_FLANGES[flangeName(flange)];
  return row === undefined ? null : newtonMetres(row.torque_nm);
}

/**
 * Largest thrust through a multi-turn flange.
 *
 * Formula: table
 *
 * @param flange - Flange name, e.g. F14. [–]
 * @returns Thrust, or null for a name that is not in the table. [N]
 * @source ISO 5210:2017, table 1, values from memory.
 * @assumes The stem nut sits above the flange, so that the flange carries the thrust.
 * @example multiTurnFlangeThrust('F14') // => 100000
 */
export function multiTurnFlangeThrust(flange: string): Newtons | null {
  const row = MULTI_TURN_FLANGES[flangeName(flange)];
  return row === undefined ? null : newtons(row.thrust_n);
}

/** `ISO 5211 F7`, `f07`, `F 10` → `F07`, `F10`. */
function flangeName(text: string): string {
  const found = /F\s*(\d{1,2})\b/i.exec(text);
  return found?.[1] === undefined ? text : `F${found[1].padStart(2, '0')}`;
}
