/*
 * The steps of an assembly that follow from movement: speed, time of a stroke, work of a visit, time at the valve.
 * Invariant: each step names its formula, its inputs with units, and its authority, and can be redone by hand.
 * Not here: torques and forces (torque-steps.ts).
 * Read next: assembly-steps.ts.
 */
import { DIRECTIONS, type Direction } from '#lib/duty/duty.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { WholeFacts } from '#lib/rules/facts.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import { type Basis, worstBasis } from '#lib/units/known-value.ts';
import { isStiff } from './core-figures.ts';
import { asInput, factorInput, fixed, just, PRACTICE, result, type StepsInput } from './step-values.ts';

export function speedStep(input: StepsInput, direction: Direction): Step {
  const { core, duty } = input.whole;
  const way = core.figures[direction];
  const low = Math.min(way.speed, way.fastest);
  return {
    id: `speed-${direction}`,
    name: `Speed at the valve, ${direction}`,
    formula: 'n = n_tool(T_run/k)/i, from the torque–speed line of the gear',
    inputs: [
      asInput('T_run', 'Running torque', duty[direction].running),
      fixed('n0', `Free speed of gear “${core.gear.name}”`, core.gear.freeSpeed, '1/min'),
      fixed('Ts', `Stall torque of gear “${core.gear.name}”`, core.gear.stallTorque, 'N·m'),
      fixed('i', `Ratio of head ${core.head.number}`, core.head.facts.ratio, '1'),
      factorInput(input),
    ],
    result: result('1/min', { low, nominal: low, high: way.fastest }, duty[direction].running.basis),
    source: 'Linear machine T/Ts + n/n0 = 1, or the tabulated curve of the drive.',
  };
}

export function timeStep({ whole }: StepsInput, direction: Direction): Step {
  const way = whole.core.figures[direction];
  const { low, high } = way.strokeTime;
  const slowest = Math.min(way.speed, way.fastest);
  return {
    id: `stroke-time-${direction}`,
    name: `Time of one stroke, ${direction}`,
    formula: 't = t0 + f·(N − Ns)·60/n + Ns·60/ns; at the least with f = 1 and the highest n',
    inputs: [
      asInput('N', 'Turns', whole.duty.turns),
      {
        ...fixed('n', 'Speed at the valve', slowest, '1/min', 'The step of the speed'),
        high: way.fastest,
      },
      fixed('f', 'Powered turns worked to and fro', toAndFro(whole), '1', PRACTICE),
      fixed('Ns', 'Slow turns at both ends', WORKING_CONSTANTS.slowTurns, 'turn', PRACTICE),
      fixed('ns', 'Speed over the slow turns', WORKING_CONSTANTS.slowSpeed, '1/min', PRACTICE),
      fixed('t0', 'Starting', WORKING_CONSTANTS.startTime, 's', PRACTICE),
    ],
    result: result('s', { low, nominal: (low + high) / 2, high }, whole.duty.turns.basis),
    source: 'Kinematics; the shares are common practice, no source.',
  };
}

const toAndFro = (whole: WholeFacts): number => (isStiff(whole) ? WORKING_CONSTANTS.toAndFro : 1);
const basisOf = ({ basis }: { readonly basis: Basis }): Basis => basis;

export function energyStep({ whole, figures }: StepsInput): Step {
  const { duty } = whole;
  return {
    id: 'energy-per-visit',
    name: 'Work at the valve for a visit, at most',
    formula: 'W = f·Σ strokes 2π·(Ns·(T_start + T_run)/2 + (N − Ns)·T_run), each way with its own torques',
    inputs: [
      asInput('N', 'Turns', duty.turns),
      asInput('T_start', 'Starting torque, opening', duty.opening.starting),
      asInput('T_run', 'Running torque, opening', duty.opening.running),
      asInput('T_start′', 'Starting torque, closing', duty.closing.starting),
      asInput('T_run′', 'Running torque, closing', duty.closing.running),
      fixed('f', 'Powered turns worked to and fro', toAndFro(whole), '1', PRACTICE),
      fixed('Ns', 'Turns over which the torque falls', WORKING_CONSTANTS.startingTurns, 'turn', PRACTICE),
      fixed('strokes', 'Strokes of a visit', duty.strokes, '1'),
    ],
    result: result(
      'J',
      just(figures.energyPerVisit),
      worstBasis([duty.turns, ...DIRECTIONS.flatMap((way) => [duty[way].starting, duty[way].running])].map(basisOf)),
    ),
    source: 'Definition of work; the shape is common practice, no source.',
  };
}

export function visitStep({ whole, figures }: StepsInput): Step {
  return {
    id: 'time-per-valve',
    name: 'Time at the valve',
    formula: 't = set-up + strokes + rests',
    inputs: [
      fixed('set-up', 'Mounting, adapter, restraint, options', figures.setUpTime, 's', PRACTICE),
      fixed('strokes', 'All strokes with rests', figures.timePerValve - figures.setUpTime, 's', 'Stroke times'),
    ],
    result: result('s', just(figures.timePerValve), whole.duty.turns.basis),
    source: 'Sum; moving and access come on top.',
  };
}
