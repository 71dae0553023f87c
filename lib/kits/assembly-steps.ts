/*
 * The steps of an assembly for the calculation sheet: torque through the chain, limiter window, reaction, speed, time, energy.
 * Invariant: each step names its formula, its inputs with units, and its authority, and can be redone by hand.
 * Not here: the steps of the duty.
 * Read next: torque-steps.ts, movement-steps.ts.
 */
import { DIRECTIONS } from '#lib/duty/duty.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import { energyStep, speedStep, timeStep, visitStep } from './movement-steps.ts';
import type { StepsInput } from './step-values.ts';
import { limiterSteps, reactionStep, stallStep, sureStep } from './torque-steps.ts';

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
