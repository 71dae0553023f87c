/*
 * Torsion of solid, hollow and square bars: stress, torque and twist.
 * Invariant: stress is the highest in the section, at the rim or at the middle of a flat.
 * Not here: keyways, splines, notches and fatigue.
 * Read next: stem-strength.ts.
 */
import {
  type Degrees,
  degrees,
  type Metres,
  type NewtonMetres,
  newtonMetres,
  type Pascals,
  pascals,
} from '#lib/units/quantity.ts';

/** Coefficients of a square bar (side ratio 1). Beer & Johnston, Mechanics of Materials, table 3.1, from memory. */
const SQUARE_STRESS = 0.208;
const SQUARE_TWIST = 0.1406;

interface TwistedBar {
  readonly torque: NewtonMetres;
  readonly length: Metres;
  /** Shear modulus of the material; steel 79e9 Pa. */
  readonly shearModulus: Pascals;
}

/**
 * Highest shear stress in a solid round bar.
 *
 * Formula: τ = 16·T/(π·d³)
 *
 * @param torque - Torque in the bar. [N·m] range 0…1e6
 * @param diameter - Diameter of the bar. [m] range 0.001…1
 * @returns Shear stress at the rim. [Pa]
 * @source Gere, Mechanics of Materials, section 3.3.
 * @assumes Elastic, no notch.
 * @example solidShaftStress({ torque: newtonMetres(100), diameter: millimetres(20) }) // => 6.366e7
 */
export function solidShaftStress({
  torque,
  diameter,
}: {
  readonly torque: NewtonMetres;
  readonly diameter: Metres;
}): Pascals {
  return pascals((16 * torque) / (Math.PI * diameter ** 3));
}

/**
 * Torque that a solid round bar carries at a shear stress.
 *
 * Formula: T = τ·π·d³/16
 *
 * @param stress - Shear stress allowed. [Pa] range 0…1e9
 * @param diameter - Diameter of the bar. [m] range 0.001…1
 * @returns Torque. [N·m]
 * @source Gere, Mechanics of Materials, section 3.3.
 * @assumes Elastic, no notch.
 * @example solidShaftTorque({ stress: pascals(100e6), diameter: millimetres(20) }) // => 157.1
 */
export function solidShaftTorque({
  stress,
  diameter,
}: {
  readonly stress: Pascals;
  readonly diameter: Metres;
}): NewtonMetres {
  return newtonMetres((stress * Math.PI * diameter ** 3) / 16);
}

/**
 * Twist of a solid round bar.
 *
 * Formula: φ = T·L/(G·π·d⁴/32)
 *
 * @param torque - Torque in the bar. [N·m] range 0…1e6
 * @param diameter - Diameter of the bar. [m] range 0.001…1
 * @param length - Length that is twisted. [m] range 0…100
 * @param shearModulus - Shear modulus. [Pa] range 1e9…1e11
 * @returns Angle of twist. [°]
 * @source Gere, Mechanics of Materials, section 3.3.
 * @assumes Elastic, the same section along its length.
 * @example solidShaftTwist({ torque: newtonMetres(100), diameter: millimetres(20), length: metres(2), shearModulus: pascals(79e9) }) // => 9.234
 */
export function solidShaftTwist({
  torque,
  diameter,
  length,
  shearModulus,
}: TwistedBar & { readonly diameter: Metres }): Degrees {
  return toDegrees((torque * length) / ((shearModulus * Math.PI * diameter ** 4) / 32));
}

/**
 * Highest shear stress in a round tube.
 *
 * Formula: τ = 16·T·D/(π·(D⁴ − d⁴))
 *
 * @param torque - Torque in the tube. [N·m] range 0…1e6
 * @param outerDiameter - Outside diameter. [m] range 0.001…1
 * @param innerDiameter - Inside diameter, below the outside. [m] range 0…1
 * @returns Shear stress at the outside. [Pa]
 * @source Gere, Mechanics of Materials, section 3.3.
 * @assumes Elastic, wall thick enough not to buckle.
 * @example hollowShaftStress({ torque: newtonMetres(4000), outerDiameter: millimetres(80), innerDiameter: millimetres(60) }) // => 5.821e7
 */
export function hollowShaftStress({
  torque,
  outerDiameter,
  innerDiameter,
}: {
  readonly torque: NewtonMetres;
  readonly outerDiameter: Metres;
  readonly innerDiameter: Metres;
}): Pascals {
  return pascals((16 * torque * outerDiameter) / (Math.PI * (outerDiameter ** 4 - innerDiameter ** 4)));
}

/**
 * Twist of a round tube.
 *
 * Formula: φ = T·L/(G·π·(D⁴ − d⁴)/32)
 *
 * @param torque - Torque in the tube. [N·m] range 0…1e6
 * @param outerDiameter - Outside diameter. [m] range 0.001…1
 * @param innerDiameter - Inside diameter, below the outside. [m] range 0…1
 * @param length - Length that is twisted. [m] range 0…100
 * @param shearModulus - Shear modulus. [Pa] range 1e9…1e11
 * @returns Angle of twist. [°]
 * @source Gere, Mechanics of Materials, section 3.3.
 * @assumes Elastic, the same section along its length.
 * @example hollowShaftTwist({ torque: newtonMetres(300), outerDiameter: millimetres(40), innerDiameter: millimetres(30), length: metres(2), shearModulus: pascals(79e9) }) // => 2.533
 */
export function hollowShaftTwist({
  torque,
  outerDiameter,
  innerDiameter,
  length,
  shearModulus,
}: TwistedBar & { readonly outerDiameter: Metres; readonly innerDiameter: Metres }): Degrees {
  return toDegrees((torque * length) / ((shearModulus * Math.PI * (outerDiameter ** 4 - innerDiameter ** 4)) / 32));
}

/**
 * Highest shear stress in a square bar.
 *
 * Formula: τ = T/(0.208·a³)
 *
 * @param torque - Torque in the bar. [N·m] range 0…1e6
 * @param side - Size across flats. [m] range 0.001…1
 * @returns Shear stress at the middle of a flat. [Pa]
 * @source Beer & Johnston, Mechanics of Materials, table 3.1, from memory.
 * @assumes Elastic, sharp corners, no notch.
 * @example squareShaftStress({ torque: newtonMetres(500), side: millimetres(22) }) // => 2.258e8
 */
export function squareShaftStress({ torque, side }: { readonly torque: NewtonMetres; readonly side: Metres }): Pascals {
  return pascals(torque / (SQUARE_STRESS * side ** 3));
}

/**
 * Torque that a square bar carries at a shear stress.
 *
 * Formula: T = 0.208·a³·τ
 *
 * @param stress - Shear stress allowed. [Pa] range 0…1e9
 * @param side - Size across flats. [m] range 0.001…1
 * @returns Torque. [N·m]
 * @source Beer & Johnston, Mechanics of Materials, table 3.1, from memory.
 * @assumes Elastic, sharp corners, no notch.
 * @example squareShaftTorque({ stress: pascals(100e6), side: millimetres(25) }) // => 325.0
 */
export function squareShaftTorque({ stress, side }: { readonly stress: Pascals; readonly side: Metres }): NewtonMetres {
  return newtonMetres(SQUARE_STRESS * side ** 3 * stress);
}

/**
 * Twist of a square bar.
 *
 * Formula: φ = T·L/(0.1406·a⁴·G)
 *
 * @param torque - Torque in the bar. [N·m] range 0…1e6
 * @param side - Size across flats. [m] range 0.001…1
 * @param length - Length that is twisted. [m] range 0…100
 * @param shearModulus - Shear modulus. [Pa] range 1e9…1e11
 * @returns Angle of twist. [°]
 * @source Beer & Johnston, Mechanics of Materials, table 3.1, from memory.
 * @assumes Elastic, the same section along its length.
 * @example squareShaftTwist({ torque: newtonMetres(100), side: millimetres(25), length: metres(1.2), shearModulus: pascals(79e9) }) // => 1.585
 */
export function squareShaftTwist({
  torque,
  side,
  length,
  shearModulus,
}: TwistedBar & { readonly side: Metres }): Degrees {
  return toDegrees((torque * length) / (SQUARE_TWIST * side ** 4 * shearModulus));
}

function toDegrees(radians: number): Degrees {
  return degrees((radians * 180) / Math.PI);
}
