/*
 * Torque through a chain of heads: what reaches the valve and what the tool must give, as an interval.
 * Invariant: the lowest torque goes with the lowest efficiency, the highest with the highest; a chain without stages changes nothing.
 * Not here: ratings of the parts (rules) and the drive's own curve (torque-speed.ts).
 * Read next: limiter-window.ts.
 */

import type { Range } from '#lib/units/known-value.ts';
import { type NewtonMetres, newtonMetres, type Ratio, ratio } from '#lib/units/quantity.ts';

/** A part of the chain that multiplies torque: turns in per turn out, and how much of the torque it loses. */
export interface Stage {
  readonly ratio: Ratio;
  readonly efficiency: { readonly low: Ratio; readonly high: Ratio };
}

/**
 * Factor by which a chain multiplies torque, as an interval.
 *
 * Formula: k = Π (ratio · efficiency)
 *
 * @param stages - Heads from the drive to the valve. [1] range ratio above 0, efficiency 0…1
 * @returns Lowest and highest torque factor. [1]
 * @source T_out = T_in · ratio · efficiency: T. H. Wentzell, Machine Design, Example 13.6.
 * @assumes Extensions and couplings lose nothing worth counting.
 * @example chainFactor([{ ratio: ratio(4), efficiency: { low: ratio(0.85), high: ratio(0.95) } }]).low // => 3.4
 */
export function chainFactor(stages: readonly Stage[]): Range<'1'> {
  return {
    low: ratio(stages.reduce((factor, stage) => factor * stage.ratio * stage.efficiency.low, 1)),
    high: ratio(stages.reduce((factor, stage) => factor * stage.ratio * stage.efficiency.high, 1)),
  };
}

/**
 * Turns at the start of a chain for one turn at its end.
 *
 * Formula: i = Π ratio
 *
 * @param stages - Heads from the drive to the valve. [1] range ratio above 0
 * @returns Total ratio; speed is divided by it. [1]
 * @source Kinematics; T. H. Wentzell, Machine Design, Example 13.4.
 * @assumes No slip.
 * @example totalRatio([{ ratio: ratio(4), efficiency: { low: ratio(0.85), high: ratio(0.95) } }, { ratio: ratio(1.5), efficiency: { low: ratio(0.9), high: ratio(0.95) } }]) // => 6
 */
export function totalRatio(stages: readonly Stage[]): Ratio {
  return ratio(stages.reduce((product, stage) => product * stage.ratio, 1));
}

/**
 * Torque that reaches the valve for a torque at the tool.
 *
 * Formula: T_valve = T_tool · k, with the lowest and the highest k
 *
 * @param toolTorque - Torque at the drive's output. [N·m] range 0…1e5
 * @param stages - Heads from the drive to the valve. [1] range ratio above 0, efficiency 0…1
 * @returns Lowest and highest torque at the wheel or nut. [N·m]
 * @source T. H. Wentzell, Machine Design, Example 13.6.
 * @assumes Steady turning: no flywheel energy, which the shock factor of the reaction covers.
 * @example torqueAtValve({ toolTorque: newtonMetres(100), stages: [{ ratio: ratio(4), efficiency: { low: ratio(0.85), high: ratio(0.95) } }] }).high // => 380
 */
export function torqueAtValve({
  toolTorque,
  stages,
}: {
  readonly toolTorque: NewtonMetres;
  readonly stages: readonly Stage[];
}): Range<'N·m'> {
  const factor = chainFactor(stages);
  return { low: newtonMetres(toolTorque * factor.low), high: newtonMetres(toolTorque * factor.high) };
}

/**
 * Torque that the tool must give for a torque at the valve.
 *
 * Formula: T_tool = T_valve / k, with the highest and the lowest k
 *
 * @param valveTorque - Torque at the wheel or nut. [N·m] range 0…1e6
 * @param stages - Heads from the drive to the valve. [1] range ratio above 0, efficiency above 0…1
 * @returns Lowest and highest torque at the drive's output. [N·m]
 * @source T. H. Wentzell, Machine Design, Example 13.6, turned round.
 * @assumes Steady turning.
 * @example torqueAtTool({ valveTorque: newtonMetres(340), stages: [{ ratio: ratio(4), efficiency: { low: ratio(0.85), high: ratio(0.95) } }] }).high // => 100
 */
export function torqueAtTool({
  valveTorque,
  stages,
}: {
  readonly valveTorque: NewtonMetres;
  readonly stages: readonly Stage[];
}): Range<'N·m'> {
  const factor = chainFactor(stages);
  return { low: newtonMetres(valveTorque / factor.high), high: newtonMetres(valveTorque / factor.low) };
}
