/*
 * What a stem bears: shear allowed by its material and compression before it bows.
 * Invariant: a longer or thinner stem never bears more.
 * Not here: torsion of a bar itself (shaft-torsion.ts) and which stem a valve has (lib/duty).
 * Read next: shaft-torsion.ts.
 */
import { type Metres, type Newtons, newtons, type Pascals, pascals, type Ratio } from '#lib/units/quantity.ts';

/** Young's modulus of steel. Machinery's Handbook, from memory; bronze stems are about half as stiff. */
export const STEEL_MODULUS = pascals(200e9);
export const BRONZE_MODULUS = pascals(105e9);

/**
 * Shear stress allowed in a ductile bar.
 *
 * Formula: τ = 0.577·Re/S
 *
 * @param yieldStress - Yield stress in tension. [Pa] range 5e7…2e9
 * @param safetyFactor - Factor against yielding. [1] range 1…5
 * @returns Shear stress allowed. [Pa]
 * @source Shigley's Mechanical Engineering Design, distortion-energy theory, section 5-5.
 * @assumes Ductile material, steady load.
 * @example allowableShear({ yieldStress: pascals(275e6), safetyFactor: ratio(1.5) }) // => 1.058e8
 */
export function allowableShear({
  yieldStress,
  safetyFactor,
}: {
  readonly yieldStress: Pascals;
  readonly safetyFactor: Ratio;
}): Pascals {
  return pascals((0.577 * yieldStress) / safetyFactor);
}

/**
 * Compression that a round stem bears before it bows, Euler when slender and Johnson when stout.
 *
 * Formula: s = K·L/(d/4); s ≥ √(2π²E/Re): F = π²·E·A/(S·s²); else F = A·Re·(1 − Re·s²/(4π²E))/S; A = π·d²/4
 *
 * @param diameter - Root diameter of the stem. [m] range 0.004…0.3
 * @param length - Length without guidance. [m] range 0…30
 * @param endFactor - Effective-length factor K: 0.7 one end held, 1 both ends pinned, 2 free. [1] range 0.5…2.1
 * @param modulus - Young's modulus. [Pa] range 5e10…2.2e11
 * @param yieldStress - Yield stress. [Pa] range 5e7…2e9
 * @param safetyFactor - Factor against bowing. [1] range 1…6
 * @returns Compression allowed. [N]
 * @source Shigley's Mechanical Engineering Design, section 4-12 (Euler) and 4-13 (Johnson).
 * @assumes Straight stem, load on its axis.
 * @example bucklingLoad({ diameter: millimetres(40), length: metres(3), endFactor: ratio(1), modulus: pascals(200e9), yieldStress: pascals(235e6), safetyFactor: ratio(3) }) // => 9187
 */
export function bucklingLoad({
  diameter,
  length,
  endFactor,
  modulus,
  yieldStress,
  safetyFactor,
}: {
  readonly diameter: Metres;
  readonly length: Metres;
  readonly endFactor: Ratio;
  readonly modulus: Pascals;
  readonly yieldStress: Pascals;
  readonly safetyFactor: Ratio;
}): Newtons {
  const area = (Math.PI * diameter ** 2) / 4;
  const slenderness = (endFactor * length) / (diameter / 4);
  const elastic = Math.PI ** 2 * modulus;
  if (slenderness >= Math.sqrt((2 * elastic) / yieldStress))
    return newtons((elastic * area) / (slenderness ** 2 * safetyFactor));
  return newtons((area * yieldStress * (1 - (yieldStress * slenderness ** 2) / (4 * elastic))) / safetyFactor);
}
