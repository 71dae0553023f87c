/*
 * The torque steps of an assembly: what the chain gives at the valve, the window of the limiter, the pull in the restraint.
 * Invariant: each step names its formula, its inputs with units, and its authority, and can be redone by hand.
 * Not here: speed, times and work (movement-steps.ts).
 * Read next: assembly-steps.ts.
 */
import type { Direction, DirectionDuty } from '#lib/duty/duty.ts';
import { UNEQUAL_SHARE } from '#lib/engineering/reaction.ts';
import type { LimiterSetting } from '#lib/equipment/assembly.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { heldByPlate } from '#lib/rules/restraint.ts';
import { jointAngle } from '#lib/rules/ways-of-working.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import { worstBasis } from '#lib/units/known-value.ts';
import { LIMITER_MARGIN } from '../chain/limiter-settings.ts';
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
import { supplyInputs } from './supply-steps.ts';

/** What head, and joint where there is one, make of the drive's torque. */
export function chainStep({ whole }: StepsInput): Step {
  const { head, figures } = whole.core;
  const { ratio, efficiency } = head.facts;
  const angle = jointAngle(whole);
  const joint = [fixed('α', 'Angle of the joint', angle, '°', 'What the line stands out of line')];
  return {
    id: 'chain-factor',
    name: 'Torque factor from the drive to the valve',
    formula: angle === 0 ? 'k = i·η' : 'k_low = i·η_low·cos α, k_high = i·η_high/cos α',
    inputs: [
      fixed('i', `Ratio of head ${head.number}`, ratio, '1'),
      { ...factorOf(`Efficiency of head ${head.number}`, efficiency), symbol: 'η' },
      ...(angle === 0 ? [] : joint),
    ],
    result: result('1', { ...figures.factor, nominal: (figures.factor.low + figures.factor.high) / 2 }, 'computed'),
    source:
      angle === 0
        ? 'T_out = T_in · ratio · efficiency: T. H. Wentzell, Machine Design, Example 13.6.'
        : 'T. H. Wentzell, Machine Design, Example 13.6; joint: R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 9.',
  };
}

export function stallStep(input: StepsInput): Step {
  const { core } = input.whole;
  const stall = Math.max(...core.drive.facts.gears.map((gear) => gear.stallTorque));
  const beyond = supplyInputs(input).filter(({ symbol }) => symbol === 'h_T');
  return {
    id: 'stall-at-valve',
    name: 'Highest torque at the valve when nothing limits it',
    formula: beyond.length === 0 ? 'T = T_stall · k_high' : 'T = T_stall · h_T · k_high',
    inputs: [
      fixed('T_stall', `Highest stall torque of ${core.drive.number}`, stall, 'N·m'),
      ...beyond,
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

/** Force sideways on stem, key or shaft. */
export function sideLoadStep({ whole }: StepsInput): Step {
  const { restraint, reaction } = whole;
  const share = restraint.facts.sideLoad === 'single anchor' ? 1 : UNEQUAL_SHARE;
  return {
    id: 'side-load',
    name: 'Side load on the stem',
    formula: 'F_s = x·F, x = 1 for a single anchor',
    inputs: [
      fixed('F', 'Pull in the restraint', reaction.force, 'N', 'The step before'),
      fixed('x', 'Part of the pull that two points leave on the stem', share, '1', PRACTICE),
    ],
    result: result('N', just(reaction.sideLoad), 'rule of thumb'),
    source: 'Statics for a single anchor; the share of a balanced one is common practice, no source.',
  };
}

/** What a plate on the ground holds under the least weight on it. */
export function plateSteps({ whole }: StepsInput): readonly Step[] {
  const { restraint } = whole;
  const held = heldByPlate(restraint);
  if (held === null) return [];
  return [
    {
      id: 'plate-holds',
      name: `Torque that ${restraint.number} holds by friction`,
      formula: 'T = μ·m·g·0.3826·a, at most its rating',
      inputs: [
        fixed('μ', 'Lowest friction on the ground', WORKING_CONSTANTS.plateFriction, '1', JUDGEMENT),
        fixed('m', 'Least mass on the plate', restraint.facts.weightOnPlate ?? 0, 'kg'),
        fixed('a', 'Side of the plate', restraint.facts.plateSide ?? 0, 'm'),
        fixed('T_r', 'Rating of the plate', restraint.facts.torqueRating, 'N·m'),
      ],
      result: result('N·m', just(held), 'rule of thumb'),
      source:
        'Friction of evenly spread pressure on a square, integrated exactly; the friction is judgement, no source.',
    },
  ];
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
