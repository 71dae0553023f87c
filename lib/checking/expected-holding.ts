/*
 * The steps that the calculation sheet must show of what takes the reaction: pull, side load, and what a plate holds.
 * Invariant: every number comes from the models and this checker's own torques.
 * Not here: whether it holds (check-chain.ts).
 * Read next: expected-steps.ts.
 */
import { UNEQUAL_SHARE } from '#lib/engineering/reaction.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Subject } from './chain.ts';
import { computed, type ExpectedStep, plate, practice } from './figure.ts';
import { highestAtValve } from './highest-torque.ts';
import { slipOf } from './limiter-marks.ts';
import { pullOf } from './pull.ts';

export function holdingSteps(subject: Subject): readonly ExpectedStep[] {
  const { restraint } = subject.chain;
  const { arm, sideLoad, kind, torqueRating, weightOnPlate, plateSide } = restraint.facts;
  const pull = pullOf(subject);
  const pulled: readonly ExpectedStep[] = [
    {
      id: 'reaction-force',
      inputs: {
        T: computed(highestAtValve(subject), 'N·m'),
        a: plate(arm.low, 'm'),
        β: practice(WORKING_CONSTANTS.pullAngle, '°'),
        c: practice(WORKING_CONSTANTS.shock),
      },
      result: practice(pull.force, 'N'),
    },
    {
      id: 'side-load',
      inputs: { F: computed(pull.force, 'N'), x: practice(sideLoad === 'balanced' ? UNEQUAL_SHARE : 1) },
      result: practice(pull.sideLoad, 'N'),
    },
  ];
  if (kind !== 'ground plate') return pulled;
  const inputs = {
    μ: practice(WORKING_CONSTANTS.plateFriction),
    m: plate(weightOnPlate ?? 0, 'kg'),
    a: plate(plateSide ?? 0, 'm'),
    T_r: plate(torqueRating, 'N·m'),
  };
  return [...pulled, { id: 'plate-holds', inputs, result: practice(slipOf(restraint), 'N·m') }];
}
