/*
 * Axial load on a valve's stem, opening and closing apart.
 * Invariant: a load above zero works against the movement; below zero it helps and may overhaul.
 * Not here: torque (power-screw.ts) and the starting factor (lib/duty).
 * Read next: power-screw.ts.
 */
import {
  type Metres,
  type NewtonMetres,
  type Newtons,
  newtonMetres,
  newtons,
  type Pascals,
  type Ratio,
  type SquareMetres,
  squareMetres,
} from '#lib/units/quantity.ts';

export type Movement = 'opening' | 'closing';

/**
 * Area of a round seat, stem or bore.
 *
 * Formula: A = π·D²/4
 *
 * @param diameter - Diameter. [m] range 0…5
 * @returns Area. [m²]
 * @source Geometry.
 * @assumes Round.
 * @example roundArea(millimetres(150)) // => 0.01767
 */
export function roundArea(diameter: Metres): SquareMetres {
  return squareMetres((Math.PI * diameter ** 2) / 4);
}

/**
 * Load of the pressure on the end of a stem that leaves the body.
 *
 * Formula: F = p·π·d²/4
 *
 * @param linePressure - Gauge pressure in the body. [Pa] range 0…5e7
 * @param stemDiameter - Diameter of the stem in its packing. [m] range 0.004…0.3
 * @returns Load that pushes the stem out. [N]
 * @source US NRC Information Notice 92-41, 29 May 1992 (the load must always be counted).
 * @assumes Air outside.
 * @example stemEndLoad({ linePressure: bar(10), stemDiameter: millimetres(30) }) // => 706.9
 */
export function stemEndLoad({
  linePressure,
  stemDiameter,
}: {
  readonly linePressure: Pascals;
  readonly stemDiameter: Metres;
}): Newtons {
  return newtons(linePressure * roundArea(stemDiameter));
}

/**
 * Stem thrust of a gate valve that slides across its seat.
 *
 * Formula: opening F = VF·A·Δp − Fs + Fp + W; closing F = VF·A·Δp + Fs + Fp − W
 *
 * @param movement - Opening or closing. [–]
 * @param seatLoad - Differential pressure × seat area. [N] range 0…5e7
 * @param valveFactor - Share of the seat load that resists sliding. [1] range 0…1.5
 * @param stemEnd - Load of the pressure on the stem's end; 0 where the stem does not move out. [N] range 0…1e6
 * @param packing - Load to slide the stem through its packing; 0 where it only turns in it. [N] range 0…1e5
 * @param weight - Weight of gate and stem where it counts. [N] range 0…1e6
 * @returns Thrust against the movement. [N]
 * @source US NRC Motor-Operated Valves Course Manual, section 3.2; sign of the stem-end load when opening from memory.
 * @assumes The sliding friction is folded into the valve factor.
 * @example gateThrust({ movement: 'closing', seatLoad: newtons(20000), valveFactor: ratio(0.3), stemEnd: newtons(700), packing: newtons(1500), weight: newtons(0) }) // => 8200
 */
export function gateThrust({
  movement,
  seatLoad,
  valveFactor,
  stemEnd,
  packing,
  weight,
}: {
  readonly movement: Movement;
  readonly seatLoad: Newtons;
  readonly valveFactor: Ratio;
  readonly stemEnd: Newtons;
  readonly packing: Newtons;
  readonly weight: Newtons;
}): Newtons {
  const upward = movement === 'opening' ? weight - stemEnd : stemEnd - weight;
  return newtons(valveFactor * seatLoad + packing + upward);
}

/**
 * Stem thrust of a globe valve.
 *
 * Formula: F = s·VF·A·Δp ± Fs + Fp + Fseat; s = +1 against the pressure, −1 with it; Fseat when closing only
 *
 * @param movement - Opening or closing. [–]
 * @param flow - Pressure under the disc or over it. [–]
 * @param seatLoad - Differential pressure × seat area. [N] range 0…5e7
 * @param valveFactor - Factor on the seat load, about 1.1. [1] range 0…1.5
 * @param stemEnd - Load of the pressure on the stem's end. [N] range 0…1e6
 * @param packing - Load to slide the stem through its packing. [N] range 0…1e5
 * @param seating - Load that makes the seat tight. [N] range 0…1e6
 * @returns Thrust against the movement; below zero the pressure helps. [N]
 * @source US NRC Motor-Operated Valves Course Manual, section 3.2; factor 1.1 from a valve maker's engineering page (secondary).
 * @assumes Disc not balanced by a pilot or a second seat.
 * @example globeThrust({ movement: 'closing', flow: 'under', seatLoad: newtons(2000), valveFactor: ratio(1.1), stemEnd: newtons(300), packing: newtons(800), seating: newtons(1500) }) // => 4800
 */
export function globeThrust({
  movement,
  flow,
  seatLoad,
  valveFactor,
  stemEnd,
  packing,
  seating,
}: {
  readonly movement: Movement;
  readonly flow: 'under' | 'over';
  readonly seatLoad: Newtons;
  readonly valveFactor: Ratio;
  readonly stemEnd: Newtons;
  readonly packing: Newtons;
  readonly seating: Newtons;
}): Newtons {
  const against = (movement === 'closing') === (flow === 'under') ? 1 : -1;
  const stem = movement === 'closing' ? stemEnd + seating : -stemEnd;
  return newtons(against * valveFactor * seatLoad + packing + stem);
}

/**
 * Stem thrust of a penstock (sluice gate) that lifts its own weight.
 *
 * Formula: opening F = W + μ·H; closing F = μ·H − W
 *
 * @param movement - Opening or closing. [–]
 * @param weight - Weight of door and stem. [N] range 0…1e6
 * @param friction - Friction between door and frame. [1] range 0…1
 * @param waterLoad - Water pressing the door on its frame. [N] range 0…5e7
 * @returns Thrust against the movement; below zero the door drops by itself. [N]
 * @source Statics; friction of a sliding gate as in Khurmi & Gupta, Theory of Machines, ch. 10, from memory.
 * @assumes Vertical door, no suction and no silt.
 * @example penstockThrust({ movement: 'closing', weight: newtons(5000), friction: ratio(0.2), waterLoad: newtons(10000) }) // => -3000
 */
export function penstockThrust({
  movement,
  weight,
  friction,
  waterLoad,
}: {
  readonly movement: Movement;
  readonly weight: Newtons;
  readonly friction: Ratio;
  readonly waterLoad: Newtons;
}): Newtons {
  return newtons(friction * waterLoad + (movement === 'opening' ? weight : -weight));
}

/**
 * Load that squeezes a diaphragm or a sleeve shut.
 *
 * Formula: F = (p + σ)·A
 *
 * @param linePressure - Gauge pressure that pushes back. [Pa] range 0…5e6
 * @param squeeze - Pressure that presses the rubber tight. [Pa] range 0…5e6
 * @param area - Area that is squeezed. [m²] range 0…5
 * @returns Load when closed. [N]
 * @source Common practice, no source.
 * @assumes The pressure acts on the bore's area.
 * @example squeezeLoad({ linePressure: bar(6), squeeze: bar(8), area: squareMetres(0.00785) }) // => 10990
 */
export function squeezeLoad({
  linePressure,
  squeeze,
  area,
}: {
  readonly linePressure: Pascals;
  readonly squeeze: Pascals;
  readonly area: SquareMetres;
}): Newtons {
  return newtons((linePressure + squeeze) * area);
}

/**
 * Friction of a packing on its stem, by the rule of a load for each metre of stem diameter.
 *
 * Formula: Fp = k·d
 *
 * @param stemDiameter - Diameter of the stem in its packing. [m] range 0.004…0.3
 * @param loadPerDiameter - Friction for each metre of stem diameter, 1 N/mm being 1000. [N over m as 1] range 5e3…3e5
 * @returns Friction force at the stem's surface. [N]
 * @source Common practice, no source; plants quote 4.4…17.8 kN (1000…4000 lbf) for power-station stems.
 * @assumes A gland that has been tightened as usual.
 * @example packingFriction({ stemDiameter: millimetres(30), loadPerDiameter: ratio(90000) }) // => 2700
 */
export function packingFriction({
  stemDiameter,
  loadPerDiameter,
}: {
  readonly stemDiameter: Metres;
  readonly loadPerDiameter: Ratio;
}): Newtons {
  return newtons(stemDiameter * loadPerDiameter);
}

/**
 * Torque of a packing that a turning stem rubs against.
 *
 * Formula: T = Fp·d/2
 *
 * @param packing - Friction force at the stem's surface. [N] range 0…1e5
 * @param stemDiameter - Diameter of the stem in its packing. [m] range 0.004…0.3
 * @returns Torque. [N·m]
 * @source Statics.
 * @assumes The friction acts at the stem's surface.
 * @example packingTorque({ packing: newtons(800), stemDiameter: millimetres(28) }) // => 11.2
 */
export function packingTorque({
  packing,
  stemDiameter,
}: {
  readonly packing: Newtons;
  readonly stemDiameter: Metres;
}): NewtonMetres {
  return newtonMetres((packing * stemDiameter) / 2);
}

/**
 * Load that makes a round metal seat tight.
 *
 * Formula: F = q·π·D
 *
 * @param seatDiameter - Mean diameter of the seat. [m] range 0.005…3
 * @param lineLoad - Load for each metre of seat, as a plain number. [N over m as 1] range 0…1e5
 * @returns Seating load. [N]
 * @source Common practice, no source; about 9 kN/m (50 lbf/in) for an ordinary metal seat, from memory.
 * @assumes Even contact around the seat.
 * @example seatingLoad({ seatDiameter: millimetres(100), lineLoad: ratio(9000) }) // => 2827
 */
export function seatingLoad({
  seatDiameter,
  lineLoad,
}: {
  readonly seatDiameter: Metres;
  readonly lineLoad: Ratio;
}): Newtons {
  return newtons(lineLoad * Math.PI * seatDiameter);
}
