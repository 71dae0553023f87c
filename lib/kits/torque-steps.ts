/*
 * The torque steps of an assembly: what the chain gives at the valve, the window of the limiter, the pull in the restraint.
 * Invariant: each step names its formula, its inputs with units, and its authority, and can be redone by hand.
 * Not here: speed, times and work (movement-steps.ts).
 * Read next: assembly-steps.ts.
 */
import type { Direction, DirectionDuty } from '#lib/duty/duty.ts';
import type { LimiterSetting } from '#lib/equipment/assembly.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import { worstBasis } from '#lib/units/known-value.ts';
import { LIMITER_MARGIN } from './limiter-settings.ts';
import {
  asInput,
  factorInput,
  factorOf,
  fixed,
  JUDGEMENT,
  just,
  PRACTICE,
  result,
  type StepsInput,
} from './step-values.ts';

export function stallStep(input: StepsInput): Step {
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

export function sureStep(input: StepsInput): Step {
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

export function limiterSteps(input: StepsInput, direction: Direction): readonly Step[] {
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
      factorOf('Torque factor from limiter to valve', limiter?.factor ?? { low: 1, high: 1 }),
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

export function reactionStep({ whole }: StepsInput): Step {
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
