/*
 * Shaft torque of butterfly, ball and plug valves, by the common two-term rule.
 * Invariant: torque rises with size and with differential pressure.
 * Not here: dynamic torque of a moving flow, and the gearbox (gear-reduction.ts).
 * Read next: gear-reduction.ts.
 */
import { type Metres, type NewtonMetres, newtonMetres, type Pascals, type Ratio } from '#lib/units/quantity.ts';

/**
 * Shaft torque of a butterfly valve at its seat.
 *
 * Formula: T = cs·D² + π/8·D²·Δp·ds·f
 *
 * @param size - Diameter of the disc. [m] range 0.02…4
 * @param differential - Differential pressure. [Pa] range 0…5e6
 * @param seatCoefficient - Seating torque for each square metre of D², in N/m as a plain number. [1] range 500…2e4
 * @param shaftShare - Shaft diameter as a share of D. [1] range 0.05…0.3
 * @param friction - Friction of the shaft's bearings. [1] range 0…0.4
 * @returns Torque to unseat. [N·m]
 * @source Form as in AWWA M49 (seating plus bearing torque), from memory; coefficients common practice, no source.
 * @assumes Seating and bearing torque add up; no dynamic torque.
 * @example butterflyTorque({ size: metres(0.5), differential: bar(10), seatCoefficient: ratio(4000), shaftShare: ratio(0.12), friction: ratio(0.15) }) // => 1884
 */
export function butterflyTorque({
  size,
  differential,
  seatCoefficient,
  shaftShare,
  friction,
}: {
  readonly size: Metres;
  readonly differential: Pascals;
  readonly seatCoefficient: Ratio;
  readonly shaftShare: Ratio;
  readonly friction: Ratio;
}): NewtonMetres {
  const bearing = (Math.PI / 8) * size ** 2 * differential * (shaftShare * size) * friction;
  return newtonMetres(seatCoefficient * size ** 2 + bearing);
}

/**
 * Shaft torque of a ball or plug valve at its seat.
 *
 * Formula: T = cs·D² + π/4·D²·Δp·f·(0.65·D)
 *
 * @param size - Nominal bore. [m] range 0.01…2
 * @param differential - Differential pressure. [Pa] range 0…5e7
 * @param seatCoefficient - Preload torque for each square metre of D², in N/m as a plain number. [1] range 500…3e4
 * @param friction - Friction between ball or plug and seat. [1] range 0…0.4
 * @returns Torque to unseat. [N·m]
 * @source Common practice, no source.
 * @assumes The seat rubs at a radius of 0.65 D.
 * @example ballTorque({ size: metres(0.1), differential: bar(10), seatCoefficient: ratio(5000), friction: ratio(0.1) }) // => 101.1
 */
export function ballTorque({
  size,
  differential,
  seatCoefficient,
  friction,
}: {
  readonly size: Metres;
  readonly differential: Pascals;
  readonly seatCoefficient: Ratio;
  readonly friction: Ratio;
}): NewtonMetres {
  return newtonMetres(seatCoefficient * size ** 2 + (Math.PI / 4) * size ** 2 * differential * friction * 0.65 * size);
}
