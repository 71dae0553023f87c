/*
 * How much torque a plate on the ground holds by friction under the weight on it, and where it must not be used.
 * Invariant: never more than the cap of the plate's rating; nothing on grating, slope, ice or a chamber's roof.
 * Not here: the plate's own parts (equipment) and choosing another restraint (kits).
 * Read next: reaction.ts.
 */
import { type Kilograms, type Metres, type NewtonMetres, newtonMetres, type Ratio } from '#lib/units/quantity.ts';

/** Standard gravity, ISO 80000-3. */
const GRAVITY = 9.80665;
/** Mean distance of the points of a square of side one from its middle: (√2 + ln(1 + √2))/6, exact. */
const SQUARE_MEAN_RADIUS = (Math.SQRT2 + Math.log(1 + Math.SQRT2)) / 6;

/** Words of a list or site that rule a ground plate out. */
const UNFIT_SURFACES = [
  'gratings?',
  'grids?',
  'slop(e|es|ed|ing)',
  'inclined?',
  'embankment',
  'ice',
  'icy',
  'frost(ed|y)?',
  'frozen',
  'snow(y)?',
  'roof',
  '(chamber|manhole|pit) (cover|lid)',
  'cover slabs?',
  'mud(dy)?',
  'sand(y)?',
] as const;

/**
 * Torque that a square plate holds by friction.
 *
 * Formula: T = min(cap, μ·m·g·0.3826·a)
 *
 * @param weight - Lowest mass that surely stands on the plate, drive and persons. [kg] range 0…500
 * @param friction - Lowest friction between plate and ground. [1] range 0…1
 * @param side - Side of the plate. [m] range 0…3
 * @param cap - Rating of the plate, never passed. [N·m] range 0…1e5
 * @returns Torque held. [N·m]
 * @source Friction torque of evenly spread pressure: mean radius of a square integrated exactly.
 * @assumes Even pressure and flat, level, firm ground.
 * @example plateTorque({ weight: kilograms(90), friction: ratio(0.4), side: metres(0.8), cap: newtonMetres(400) }) // => 108.1
 */
export function plateTorque({
  weight,
  friction,
  side,
  cap,
}: {
  readonly weight: Kilograms;
  readonly friction: Ratio;
  readonly side: Metres;
  readonly cap: NewtonMetres;
}): NewtonMetres {
  return newtonMetres(Math.min(cap, friction * weight * GRAVITY * SQUARE_MEAN_RADIUS * side));
}

/**
 * Whether a surface rules a ground plate out.
 *
 * Formula: the surface's text holds a word of: grating, grid, slope, ice, frost, snow, roof, chamber cover or lid, cover slab, mud, sand
 *
 * @param surface - What the list or the site says of the ground. [–]
 * @returns Whether a plate must not be used there. [–]
 * @source Common practice, no source.
 * @assumes Text in English, as intake leaves it.
 * @example isUnfitForPlate('Steel grating') // => true
 */
export function isUnfitForPlate(surface: string): boolean {
  const words = surface.toLowerCase();
  return UNFIT_SURFACES.some((unfit) => new RegExp(`\\b${unfit}\\b`).test(words));
}
