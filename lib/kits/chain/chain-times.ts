/*
 * Time at one valve, additively by core, grip and restraint.
 * Invariant: the time of an assembly is the sum of its three shares, so that any core may be joined with any slot.
 * Not here: moving and access, which belong to the line.
 * Read next: ../cores/families.ts.
 */

import type { AdapterModel, ExtensionModel, OptionModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Core, LineFacts } from '#lib/rules/facts.ts';
import { type Seconds, seconds } from '#lib/units/quantity.ts';
import { wholeSeconds } from '../kit-constants.ts';
import type { Reaction } from './reactions.ts';
import { visitStrokeTime } from './visit-time.ts';

export function strokesTime({ facts, core }: { readonly facts: LineFacts; readonly core: Core }): Seconds {
  const { continuousRun, restAfterRun } = core.drive.facts;
  return wholeSeconds(visitStrokeTime({ facts, figures: core.figures, continuousRun, restAfterRun }));
}

/** Putting drive, head and limiter on the valve. */
export function mountTime(core: Core): Seconds {
  return wholeSeconds(WORKING_CONSTANTS.mountTime + (core.limiter?.facts.setUpTime ?? 0));
}

export function counterTime(counter: OptionModel | null): Seconds {
  return wholeSeconds(counter?.facts.setUpTime ?? 0);
}

export function coreTime(at: { readonly facts: LineFacts; readonly core: Core }): Seconds {
  return seconds(strokesTime(at) + mountTime(at.core));
}

/** Which adapter of a covering set will fit is not known before: the slowest is counted. */
export function gripTime({
  elements,
}: {
  readonly elements: readonly { readonly adapter: AdapterModel; readonly extensions: readonly ExtensionModel[] }[];
}): Seconds {
  const times = elements.map(
    ({ adapter, extensions }) => adapter.facts.fittingTime + extensions.length * WORKING_CONSTANTS.extensionTime,
  );
  return wholeSeconds(Math.max(0, ...times));
}

export function reactionTime({ restraint, secondChain }: Reaction): Seconds {
  return wholeSeconds(restraint.facts.setUpTime + (secondChain === null ? 0 : WORKING_CONSTANTS.secondChainTime));
}
