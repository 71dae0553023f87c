/*
 * The steps of an assembly that follow from movement: speed, time of a stroke, work of a visit, time at the valve.
 * Invariant: each step names its formula, its inputs with units, and its authority, and can be redone by hand.
 * Not here: torques and forces (torque-steps.ts).
 * Read next: assembly-steps.ts.
 */
import { DIRECTIONS, type Direction } from '#lib/duty/duty.ts';
import type { Gear } from '#lib/equipment/drive.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { WholeFacts } from '#lib/rules/facts.ts';
import { isStiff, jointAngle } from '#lib/rules/ways-of-working.ts';
import type { Step, StepInput } from '#lib/units/calculation-step.ts';
import { type Basis, worstBasis } from '#lib/units/known-value.ts';
import { strokesEachWay } from '../chain/visit-time.ts';
import { asInput, factorInput, fixed, just, PRACTICE, result, type StepsInput } from './step-values.ts';
import { supplyInputs } from './supply-steps.ts';

export function speedStep(input: StepsInput, direction: Direction): Step {
  const { core, duty } = input.whole;
  const way = core.figures[direction];
  const low = Math.min(way.speed, way.fastest);
  return {
    id: `speed-${direction}`,
    name: `Speed at the valve, ${direction}`,
    formula: speedFormula(input),
    inputs: [
      asInput('T_run', 'Running torque', duty[direction].running),
      fixed('n0', `Free speed of gear “${core.gear.name}”`, core.gear.freeSpeed, '1/min'),
      fixed('Ts', `Stall torque of gear “${core.gear.name}”`, core.gear.stallTorque, 'N·m'),
      fixed('i', `Ratio of head ${core.head.number}`, core.head.facts.ratio, '1'),
      factorInput(input),
      ...curvePoints(core.gear),
      ...supplyInputs(input),
    ],
    result: result('1/min', { low, nominal: low, high: way.fastest }, duty[direction].running.basis),
    source: 'Linear machine T/Ts + n/n0 = 1, or the tabulated curve of the drive.',
  };
}

/** Highest at T_run low and k high, likely at T_run likely and the middle of k. */
function speedFormula({ whole }: StepsInput): string {
  const { core } = whole;
  const line = core.gear.curve === undefined ? 'n0·(1 − T/Ts)' : 'straight between the points (T, n)';
  const supply = core.drive.facts.power.kind === 'battery' ? '' : ', T and n times h at the most, times s at the least';
  const joint = jointAngle(whole) === 0 ? '' : '; at the most over cos α of the joint';
  return `n = n_tool(T_run/k)/i, n_tool = ${line}${supply}${joint}`;
}

/** Points between free speed and stall of a gear whose curve is tabulated. */
function curvePoints(gear: Gear): readonly StepInput[] {
  const inner = (gear.curve ?? []).filter(({ torque }) => torque > 0 && torque < gear.stallTorque);
  return inner.flatMap(({ torque, speed }, index) => [
    fixed(`T${index + 1}`, `Point ${index + 1} of the curve`, torque, 'N·m'),
    fixed(`n${index + 1}`, `Point ${index + 1} of the curve`, speed, '1/min'),
  ]);
}

/** All strokes of a visit and the rests that the drive takes between its runs. */
export function restsStep({ whole, figures }: StepsInput): Step {
  const { continuousRun, restAfterRun } = whole.core.drive.facts;
  const middle = (direction: Direction): number => {
    const { low, high } = whole.core.figures[direction].strokeTime;
    return (low + high) / 2;
  };
  const { both, odd } = strokesEachWay(whole.duty.strokes);
  return {
    id: 'strokes-with-rests',
    name: 'All strokes of a visit, with rests',
    formula: 't = t_run + r·(⌈t_run/t_c⌉ − 1), t_run = b·(t_o + t_s) + o·max(t_o, t_s), to a whole second',
    inputs: [
      fixed('t_o', 'Middle time of an opening stroke', middle('opening'), 's', 'The steps of the strokes'),
      fixed('t_s', 'Middle time of a closing stroke', middle('closing'), 's', 'The steps of the strokes'),
      fixed('b', 'Strokes there and back', both, '1'),
      fixed('o', 'Odd stroke', odd, '1'),
      fixed('t_c', `Longest run of ${whole.core.drive.number}`, continuousRun, 's'),
      fixed('r', 'Rest after such a run', restAfterRun, 's'),
    ],
    result: result('s', just(figures.timePerValve - figures.setUpTime), whole.duty.turns.basis),
    source: 'Counting; the limit and the rest are the drive’s data.',
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
