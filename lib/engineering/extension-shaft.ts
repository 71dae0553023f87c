/*
 * An extension shaft or key under torque: how far it winds up, what it stores, and how fast it may turn.
 * Invariant: a longer shaft winds up more and whirls sooner.
 * Not here: shear stress and allowable torque (shaft-torsion.ts) and a model's own rating (its facts).
 * Read next: universal-joint.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import {
  type Degrees,
  type Joules,
  joules,
  type Metres,
  type NewtonMetres,
  pascals,
  perMinute,
  type RevolutionsPerMinute,
} from '#lib/units/quantity.ts';
import { hollowShaftTwist } from './shaft-torsion.ts';

/** A round shaft; inner diameter 0 when solid. */
export interface RoundShaft {
  readonly outer: Metres;
  readonly inner: Metres;
  readonly length: Metres;
}

/** Steel: G ≈ 79 GPa, E = 210 GPa, density 7850 kg/m³; handbook values, from memory. */
const STEEL_SHEAR_MODULUS = pascals(79e9);
const STEEL_MODULUS = 210e9;
const STEEL_DENSITY = 7850;

/**
 * Wind-up of a round steel shaft.
 *
 * Formula: φ = T·L/(G·J), J = π·(D⁴ − d⁴)/32
 *
 * @param torque - Torque in the shaft. [N·m] range 0…1e5
 * @param shaft - Outer and inner diameter and length. [m] range above 0
 * @returns Wind-up between the ends. [°]
 * @source J. M. Gere, Mechanics of Materials, Example 3.1.
 * @assumes Steel with G = 79 GPa, below yield.
 * @example windUp({ torque: newtonMetres(300), shaft: { outer: metres(0.03), inner: metres(0), length: metres(2) } }) // => 5.472
 */
export function windUp({ torque, shaft }: { readonly torque: NewtonMetres; readonly shaft: RoundShaft }): Degrees {
  return hollowShaftTwist({
    torque,
    outerDiameter: shaft.outer,
    innerDiameter: shaft.inner,
    length: shaft.length,
    shearModulus: STEEL_SHEAR_MODULUS,
  });
}

/**
 * Energy that a wound-up shaft gives back when it is let go.
 *
 * Formula: E = T·φ/2, φ in radians
 *
 * @param torque - Torque that winds it up. [N·m] range 0…1e5
 * @param windUp - Wind-up between the ends. [°] range 0…360
 * @returns Energy stored. [J]
 * @source Work of a linear spring; J. M. Gere, Mechanics of Materials, strain energy in torsion U = T·φ/2.
 * @assumes Below yield, so that torque and wind-up are in proportion.
 * @example storedEnergy({ torque: newtonMetres(300), windUp: degrees(5.472) }) // => 14.33
 */
export function storedEnergy({ torque, windUp }: { readonly torque: NewtonMetres; readonly windUp: Degrees }): Joules {
  return joules((torque * windUp * Math.PI) / 180 / 2);
}

/**
 * Speed at which a round steel shaft between two bearings begins to whirl.
 *
 * Formula: n = 60/(2π)·(π/L)²·√(E/ρ)·√(D² + d²)/4
 *
 * @param shaft - Outer and inner diameter and length between supports. [m] range above 0
 * @returns First whirling speed; stay well below it. [1/min]
 * @source First bending frequency of a beam on two supports (Timoshenko, Vibration Problems in Engineering), from memory.
 * @assumes Simply supported at both ends, straight and in balance; keep to half of it.
 * @example whirlSpeed({ outer: metres(0.03), inner: metres(0), length: metres(3) }) // => 406.2
 */
export function whirlSpeed(shaft: RoundShaft): RevolutionsPerMinute {
  invariant(shaft.length > 0, 'A shaft has a length.');
  const gyration = Math.sqrt(shaft.outer ** 2 + shaft.inner ** 2) / 4;
  const angular = (Math.PI / shaft.length) ** 2 * Math.sqrt(STEEL_MODULUS / STEEL_DENSITY) * gyration;
  return perMinute((angular * 60) / (2 * Math.PI));
}
