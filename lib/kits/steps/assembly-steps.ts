/*
 * The steps of an assembly for the calculation sheet: torque through the chain, limiter window, reaction, speed, time, energy.
 * Invariant: each step names its formula, its inputs with units, and its authority, and can be redone by hand.
 * Not here: the steps of the duty.
 * Read next: torque-steps.ts, supply-steps.ts, shaft-steps.ts, movement-steps.ts.
 */
import { DIRECTIONS } from '#lib/duty/duty.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import { energyStep, restsStep, speedStep, timeStep, visitStep } from './movement-steps.ts';
import { shaftSteps } from './shaft-steps.ts';
import type { StepsInput } from './step-values.ts';
import { packSteps, supplySteps } from './supply-steps.ts';
import {
  chainStep,
  limiterSteps,
  plateSteps,
  reactionStep,
  sideLoadStep,
  stallStep,
  sureStep,
} from './torque-steps.ts';

export function assemblySteps(input: StepsInput): readonly Step[] {
  return [
    chainStep(input),
    ...supplySteps(input),
    stallStep(input),
    sureStep(input),
    ...DIRECTIONS.flatMap((direction) => limiterSteps(input, direction)),
    ...DIRECTIONS.map((direction) => speedStep(input, direction)),
    ...DIRECTIONS.map((direction) => timeStep(input, direction)),
    restsStep(input),
    reactionStep(input),
    sideLoadStep(input),
    ...plateSteps(input),
    ...shaftSteps(input),
    energyStep(input),
    ...packSteps(input),
    visitStep(input),
  ];
}
