/*
 * Inputs and results as the steps of an assembly name them, each with its basis and authority.
 * Invariant: what is worked out is never better known than what it came from.
 * Not here: the steps themselves (assembly-steps.ts).
 * Read next: assembly-steps.ts.
 */
import type { AssemblyFigures, DirectionSettings } from '#lib/equipment/assembly.ts';
import type { WholeFacts } from '#lib/rules/facts.ts';
import type { StepInput } from '#lib/units/calculation-step.ts';
import { type Basis, type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

export interface StepsInput {
  readonly whole: WholeFacts;
  readonly opening: DirectionSettings;
  readonly closing: DirectionSettings;
  readonly figures: AssemblyFigures;
}

export const PLATE = 'Facts of the part';
export const PRACTICE = 'Common practice, no source';
export const JUDGEMENT = 'Judgement, no source';

export function fixed(symbol: string, name: string, value: number, unit: Unit, source = PLATE): StepInput {
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

export function asInput<U extends Unit>(symbol: string, name: string, value: Known<U>): StepInput {
  const { low, nominal, high, unit, basis, source } = value;
  return { symbol, name, low, nominal, high, unit, basis, source };
}

export function result<U extends Unit>(
  unit: U,
  range: { readonly low: number; readonly nominal: number; readonly high: number },
  basis: Basis,
): Known<U> {
  return known(unit, range, {
    basis: basis === 'rule of thumb' || basis === 'assumed' ? basis : 'computed',
    source: 'Worked out from the values named.',
  });
}

export const just = (value: number) => ({ low: value, nominal: value, high: value });

export function factorInput({ whole }: StepsInput): StepInput {
  return factorOf(
    `Torque factor from the drive to the valve, head ${whole.core.head.number}`,
    whole.core.figures.factor,
  );
}

export function factorOf(name: string, { low, high }: { readonly low: number; readonly high: number }): StepInput {
  return {
    symbol: 'k',
    name,
    low,
    nominal: (low + high) / 2,
    high,
    unit: '1',
    basis: 'stated',
    source: PLATE,
  };
}
