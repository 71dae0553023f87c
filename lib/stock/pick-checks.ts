/*
 * What is tried before a booking leaves: each chain of the job put together, each machine and limiter run at torque.
 * Invariant: a check counts only with the very units that it was done with; a limiter passes only within its own error.
 * Not here: the figures of the valve (lib/engineering), writing a check down (lib/services/yard/picking).
 * Read next: pick-scan.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';

export interface PickedUnit {
  readonly serial: string;
  /** Its own model, which may stand in for the planned one. */
  readonly model: Model;
  /** The model that was planned. */
  readonly planned: string;
}

/** A chain of the plan, from the drive to what grips the valve. */
export interface PlannedChain {
  readonly id: string;
  readonly models: readonly string[];
}

export interface ChainToTry extends PlannedChain {
  /** The units that are tried together; all of each model. */
  readonly serials: readonly string[];
}

export interface TorqueTest {
  readonly serial: string;
  /** The limiter's own range and error; null where the machine has none. */
  readonly limiter: LimiterFacts | null;
}

export interface LimiterFacts {
  readonly lowest: number;
  readonly highest: number;
  /** Relative, either way. */
  readonly error: number;
}

export function chainsToTry({
  chains,
  picked,
}: {
  readonly chains: readonly PlannedChain[];
  readonly picked: readonly PickedUnit[];
}): readonly ChainToTry[] {
  return chains.map((chain) => ({
    ...chain,
    serials: picked
      .filter(({ planned }) => chain.models.includes(planned))
      .map(({ serial }) => serial)
      .sort(),
  }));
}

/** Every drive and every torque limiter that goes. */
export function torqueTests(picked: readonly PickedUnit[]): readonly TorqueTest[] {
  return picked.flatMap(({ serial, model }): readonly TorqueTest[] => {
    if (model.role === 'drive') return [{ serial, limiter: model.facts.limiter }];
    if (model.role !== 'option' || model.facts.kind !== 'torque limiter') return [];
    const { lowest = 0, highest = Number.POSITIVE_INFINITY, error = 0 } = model.facts;
    return [{ serial, limiter: { lowest, highest, error } }];
  });
}

export interface TorqueReading {
  /** Where the limiter stood; null where there is none. */
  readonly set: number | null;
  readonly measured: number;
  readonly instrument: string;
}

export interface TestVerdict {
  readonly passed: boolean;
  readonly sentence: string;
}

export function judgeTest({
  test,
  reading,
}: {
  readonly test: TorqueTest;
  readonly reading: TorqueReading;
}): Result<TestVerdict> {
  const { serial, limiter } = test;
  const { set, measured, instrument } = reading;
  if (instrument.trim() === '') return no('instrument-missing', 'Name the instrument that read the torque.');
  if (!(measured > 0)) return no('torque-missing', 'Type the torque that the instrument read.');
  if (limiter === null) return ok({ passed: true, sentence: `${serial} runs at ${told(measured)} N·m.` });
  if (set === null) return no('setting-missing', `Type what the limiter of ${serial} was set to.`);
  if (set < limiter.lowest - 1e-9 || set > limiter.highest + 1e-9)
    return no(
      'setting-outside-range',
      `${serial} is set from ${told(limiter.lowest)} to ${told(limiter.highest)} N·m, not to ${told(set)}.`,
    );
  const [low, high] = [set * (1 - limiter.error), set * (1 + limiter.error)];
  const passed = measured >= low - 1e-9 && measured <= high + 1e-9;
  const band = `${told(low)} to ${told(high)} N·m`;
  return ok({
    passed,
    sentence: passed
      ? `${serial} trips at ${told(measured)} N·m, within ${band}.`
      : `${serial} trips at ${told(measured)} N·m, outside ${band}: it stays here.`,
  });
}

function told(value: number): string {
  return String(Number(value.toPrecision(3)));
}

function no(code: string, sentence: string): Failed<Refused> {
  return failed({ code, sentence });
}
