/*
 * Gearboxes of valves: torque, turns and efficiency.
 * Invariant: ratio is input turns for one output turn; efficiency is between 0 and 1.
 * Not here: the drive's own gears and heads (tool side), end stops (lib/duty).
 * Read next: flange-limits.ts.
 */
import {
  type Degrees,
  type NewtonMetres,
  newtonMetres,
  type Ratio,
  ratio,
  type Turns,
  turns,
} from '#lib/units/quantity.ts';

/**
 * Torque at the input of a gearbox for a torque at its output.
 *
 * Formula: Tin = Tout/(i·η)
 *
 * @param outputTorque - Torque at the valve's shaft. [N·m] range 0…1e7
 * @param ratio - Input turns for one output turn. [1] range 0.1…1e5
 * @param efficiency - Share of the work that arrives. [1] range 0.01…1
 * @returns Torque at the input. [N·m]
 * @source Wentzell, Machine Design, ch. 13.
 * @assumes The input drives the output.
 * @example gearInputTorque({ outputTorque: newtonMetres(2000), ratio: ratio(70), efficiency: ratio(0.3) }) // => 95.24
 */
export function gearInputTorque({
  outputTorque,
  ratio,
  efficiency,
}: {
  readonly outputTorque: NewtonMetres;
  readonly ratio: Ratio;
  readonly efficiency: Ratio;
}): NewtonMetres {
  return newtonMetres(outputTorque / (ratio * efficiency));
}

/**
 * Torque at the output of a gearbox for a torque at its input.
 *
 * Formula: Tout = Tin·i·η
 *
 * @param inputTorque - Torque at the input. [N·m] range 0…1e5
 * @param ratio - Input turns for one output turn. [1] range 0.1…1e5
 * @param efficiency - Share of the work that arrives. [1] range 0.01…1
 * @returns Torque at the output. [N·m]
 * @source Wentzell, Machine Design, ch. 13.
 * @assumes The input drives the output.
 * @example gearOutputTorque({ inputTorque: newtonMetres(20.34), ratio: ratio(60), efficiency: ratio(0.73) }) // => 890.9
 */
export function gearOutputTorque({
  inputTorque,
  ratio,
  efficiency,
}: {
  readonly inputTorque: NewtonMetres;
  readonly ratio: Ratio;
  readonly efficiency: Ratio;
}): NewtonMetres {
  return newtonMetres(inputTorque * ratio * efficiency);
}

/**
 * Efficiency of a worm that drives its wheel.
 *
 * Formula: η = tan λ·(1 − f·tan λ)/(f + tan λ)
 *
 * @param leadAngle - Lead angle of the worm. [°] range 0.5…45
 * @param friction - Coefficient of friction. [1] range 0.005…0.3
 * @returns Efficiency of the mesh, bearings left out. [1]
 * @source Wentzell, Machine Design, Example 13.6.
 * @assumes Pressure angle left out.
 * @example wormEfficiency({ leadAngle: degrees(4.77), friction: ratio(0.03) }) // => 0.7337
 */
export function wormEfficiency({
  leadAngle,
  friction,
}: {
  readonly leadAngle: Degrees;
  readonly friction: Ratio;
}): Ratio {
  const slope = Math.tan((leadAngle * Math.PI) / 180);
  return ratio((slope * (1 - friction * slope)) / (friction + slope));
}

/**
 * Ratio of a worm gear.
 *
 * Formula: i = z/n
 *
 * @param wheelTeeth - Teeth of the wheel. [1] range 5…500
 * @param starts - Starts of the worm. [1] range 1…8
 * @returns Input turns for one output turn. [1]
 * @source Wentzell, Machine Design, Example 13.4.
 * @assumes A full wheel; a segment has the ratio of its full wheel.
 * @example wormRatio({ wheelTeeth: ratio(60), starts: ratio(1) }) // => 60
 */
export function wormRatio({ wheelTeeth, starts }: { readonly wheelTeeth: Ratio; readonly starts: Ratio }): Ratio {
  return ratio(wheelTeeth / starts);
}

/**
 * Input turns of a gearbox over a true quarter turn.
 *
 * Formula: n = i/4
 *
 * @param ratio - Input turns for one full output turn. [1] range 0.1…1e5
 * @returns Input turns for 90°. [turn]
 * @source Geometry; a 40:1 worm takes 10 turns.
 * @assumes A constant ratio: a worm, never a travelling nut or a link.
 * @example quarterTurnInputTurns(ratio(40)) // => 10
 */
export function quarterTurnInputTurns(ratio: Ratio): Turns {
  return turns(ratio / 4);
}

/**
 * Input turns of a geared multi-turn valve.
 *
 * Formula: n = N·i
 *
 * @param valveTurns - Turns of the valve's stem or nut. [turn] range 0…1e4
 * @param ratio - Input turns for one output turn. [1] range 0.1…1e3
 * @returns Turns at the gearbox's input. [turn]
 * @source Geometry.
 * @assumes A constant ratio: bevel or spur.
 * @example gearedTurns({ valveTurns: turns(50), ratio: ratio(3) }) // => 150
 */
export function gearedTurns({ valveTurns, ratio }: { readonly valveTurns: Turns; readonly ratio: Ratio }): Turns {
  return turns(valveTurns * ratio);
}
