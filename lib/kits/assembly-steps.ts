/*
 * The steps of an assembly for the calculation sheet: torque through the chain, limiter window, reaction, speed, time, energy.
 * Invariant: each step names its formula, its inputs with units, and its authority, and can be redone by hand.
 * Not here: the steps of the duty.
 * Read next: build-assembly.ts.
 */

import { DIRECTIONS, type Direction, type DirectionDuty } from '#lib/duty/duty.ts';
import type { AssemblyFigures, DirectionSettings, LimiterSetting } from '#lib/equipment/assembly.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { WholeFacts } from '#lib/rules/facts.ts';
import type { Step, StepInput } from '#lib/units/calculation-step.ts';
import { type Basis, type Known, known, worstBasis } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { isStiff } from './core-figures.ts';
import { LIMITER_MARGIN } from './limiter-settings.ts';

interface StepsInput {
  readonly whole: WholeFacts;
  readonly opening: DirectionSettings;
  readonly closing: DirectionSettings;
  readonly figures: AssemblyFigures;
}

const PLATE = 'Facts of the part';
const PRACTICE = 'Common practice, no source';
const JUDGEMENT = 'Judgement, no source';

export function assemblySteps(input: StepsInput): readonly Step[] {
  return [
    stallStep(input),
    sureStep(input),
    ...DIRECTIONS.flatMap((direction) => limiterSteps(input, direction)),
    ...DIRECTIONS.map((direction) => speedStep(input, direction)),
    ...DIRECTIONS.map((direction) => timeStep(input, direction)),
    reactionStep(input),
    energyStep(input),
    visitStep(input),
  ];
}

function fixed(symbol: string, name: string, value: number, unit: Unit, source = PLATE): StepInput {
  return {
    symbol,
    name,
    low: value,
    nominal: value,
    high: value,
    unit,
    basis: source === PLATE ? 'stated' : source === PRACTICE || source === JUDGEMENT ? 'rule of thumb' : 'computed',
    source,
  };
}

function asInput<U extends Unit>(symbol: string, name: string, value: Known<U>): StepInput {
  const { low, nominal, high, unit, basis, source } = value;
  return { symbol, name, low, nominal, high, unit, basis, source };
}

function result<U extends Unit>(
  unit: U,
  range: { readonly low: number; readonly nominal: number; readonly high: number },
  basis: Basis,
): Known<U> {
  return known(unit, range, {
    basis: basis === 'rule of thumb' || basis === 'assumed' ? basis : 'computed',
    source: 'Worked out from the values named.',
  });
}

const just = (value: number) => ({ low: value, nominal: value, high: value });

function factorInput({ whole }: StepsInput): StepInput {
  const { low, high } = whole.core.figures.factor;
  return {
    symbol: 'k',
    name: `Torque factor of head ${whole.core.head.number}`,
    low,
    nominal: (low + high) / 2,
    high,
    unit: '1',
    basis: 'stated',
    source: PLATE,
  };
}

function stallStep(input: StepsInput): Step {
  const { core } = input.whole;
  return {
    id: 'stall-at-valve',
    name: 'Highest torque at the valve when nothing limits it',
    formula: 'T = T_stall · k_high',
    inputs: [
      fixed('T_stall', `Highest stall torque of ${core.drive.number}`, core.figures.stallAtDrive, 'N·m'),
      factorInput(input),
    ],
    result: result('N·m', just(core.figures.stallAtValve), 'computed'),
    source: 'T_out = T_in · ratio · efficiency: T. H. Wentzell, Machine Design, Example 13.6.',
  };
}

function sureStep(input: StepsInput): Step {
  const { core } = input.whole;
  return {
    id: 'sure-at-valve',
    name: 'Torque that the chain surely gives while running',
    formula: 'T = T_rated · s · k_low',
    inputs: [
      fixed(
        'T_rated',
        `Rated torque of ${core.drive.number} in gear “${core.gear.name}”`,
        core.gear.ratedTorque,
        'N·m',
      ),
      fixed(
        's',
        'Share that the supply leaves',
        core.figures.sureAtValve / (core.gear.ratedTorque * core.figures.factor.low),
        '1',
        'Air pressure after the hose, altitude and heat',
      ),
      factorInput(input),
    ],
    result: result('N·m', just(core.figures.sureAtValve), 'computed'),
    source: 'T_out = T_in · ratio · efficiency: T. H. Wentzell, Machine Design, Example 13.6.',
  };
}

function limiterSteps(input: StepsInput, direction: Direction): readonly Step[] {
  const { limiter } = input.whole.core.figures;
  if (limiter === null) return [];
  const { unseat, run, seat } = input[direction];
  const purposes: readonly (readonly [string, LimiterSetting | null])[] = [
    ['unseat', unseat],
    ['run', run],
    ['seat', seat],
  ];
  return purposes.flatMap(([purpose, setting]) =>
    setting === null ? [] : [limiterStep(input, { direction, purpose, setting })],
  );
}

function limiterStep(
  { whole }: StepsInput,
  at: { readonly direction: Direction; readonly purpose: string; readonly setting: LimiterSetting },
): Step {
  const duty = whole.duty[at.direction];
  const { limiter } = whole.core.figures;
  const { starting, running, neverExceed } = duty;
  const wanted = at.direction === 'opening' && at.purpose === 'run' ? running : starting;
  const { low, high } = limiter?.factor ?? { low: 1, high: 1 };
  const basis = worstBasis([wanted.basis, neverExceed.torque.basis]);
  return {
    id: `limiter-${at.purpose}-${at.direction}`,
    name: `Limiter ${limiter?.number ?? ''} to ${at.purpose}, ${at.direction}`,
    formula:
      'start = T_0/k_high; ceiling ≤ (T_never,low/k_high − o)/(1 + e); needed = T_high·m/((1 − e)·k_low); all to whole steps',
    inputs: [
      asInput('T', 'Torque that the purpose needs', wanted),
      fixed('T_0', 'Least torque that may do', leastOf(at, duty), 'N·m', 'The lower ends of the torques needed'),
      asInput('T_never', `What the valve must never see (${neverExceed.kind})`, neverExceed.torque),
      fixed('m', 'Margin of the house', LIMITER_MARGIN, '1', PRACTICE),
      fixed('e', 'Error of the limiter', limiter?.error ?? 0, '1'),
      fixed('o', 'What comes after the trip', limiter?.overshoot ?? 0, 'N·m'),
      {
        symbol: 'k',
        name: 'Torque factor from limiter to valve',
        low,
        nominal: (low + high) / 2,
        high,
        unit: '1',
        basis: 'stated',
        source: PLATE,
      },
    ],
    result: result('N·m', { low: at.setting.start, nominal: at.setting.start, high: at.setting.ceiling }, basis),
    source:
      'Limiter window: a setting read with error e gives between (1 − e) and (1 + e) of it; the margin is common practice.',
  };
}

/** Opening asks for what its purpose names; closing starts from the running torque where that is less. */
function leastOf(
  { direction, purpose }: { readonly direction: Direction; readonly purpose: string },
  { starting, running }: DirectionDuty,
): number {
  if (purpose === 'unseat') return starting.low;
  if (direction === 'opening' || purpose === 'seat') return running.low;
  return Math.min(running.low, starting.low);
}

function speedStep(input: StepsInput, direction: Direction): Step {
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

function timeStep({ whole }: StepsInput, direction: Direction): Step {
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

function reactionStep({ whole }: StepsInput): Step {
  const { restraint, reaction, core } = whole;
  const single = restraint.facts.sideLoad === 'single anchor';
  return {
    id: 'reaction-force',
    name: `Pull in ${restraint.number}`,
    formula: single ? 'F = c·T/(a·sin β)' : 'F = c·T/(2·a·sin β), two points pull',
    inputs: [
      fixed(
        'T',
        'Highest torque about the valve’s axis',
        core.figures.highestAtValve,
        'N·m',
        'Stall, or the limiter at its ceiling with its error',
      ),
      fixed('a', 'Shortest arm', reaction.arm_m, 'm'),
      fixed('β', 'Least angle between arm and pull', WORKING_CONSTANTS.pullAngle, '°', PRACTICE),
      fixed('c', 'Shock of a stall', WORKING_CONSTANTS.shock, '1', JUDGEMENT),
    ],
    result: result('N', just(reaction.force), 'rule of thumb'),
    source: 'Statics; the shock factor is judgement, no source.',
  };
}

const toAndFro = (whole: WholeFacts): number => (isStiff(whole) ? WORKING_CONSTANTS.toAndFro : 1);
const basisOf = ({ basis }: { readonly basis: Basis }): Basis => basis;

function energyStep({ whole, figures }: StepsInput): Step {
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

function visitStep({ whole, figures }: StepsInput): Step {
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
