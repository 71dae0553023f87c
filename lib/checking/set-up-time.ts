/*
 * Time to set an assembly up at a valve, added up a second time.
 * Invariant: of a covering set the slowest adapter counts; each share is rounded to whole seconds as the plan adds them.
 * Not here: the strokes (strokes.ts).
 * Read next: check-figures.ts.
 */
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Subject } from './chain.ts';

export function setUpTimeOf({ chain }: Subject): number {
  const { mountTime, extensionTime, secondChainTime } = WORKING_CONSTANTS;
  const limiter = chain.options.find((option) => option.facts.kind === 'torque limiter');
  const grips = chain.links.map(
    ({ adapter, extensions }) => adapter.facts.fittingTime + extensionTime * extensions.length,
  );
  const hasSecondChain = chain.accessories.some(({ model }) => model.facts.kind === 'second chain');
  return (
    Math.round(mountTime + (limiter?.facts.setUpTime ?? 0)) +
    Math.round(chain.counter?.facts.setUpTime ?? 0) +
    Math.round(Math.max(...grips)) +
    Math.round(chain.restraint.facts.setUpTime + (hasSecondChain ? secondChainTime : 0))
  );
}
