/*
 * Chance that a core moves the valve at the first visit, from the range of the torque that is needed.
 * Invariant: between 0 and 1; 1 when even the highest torque needed is surely reached.
 * Not here: what the covering set misses: a set that is chosen misses nothing.
 * Read next: families.ts.
 */
import { chanceAtMost } from '#lib/engineering/chance.ts';
import type { Core, LineFacts } from '#lib/rules/facts.ts';

/** Opening and closing torque rise and fall together: the worse direction decides. */
export function coreChance({ facts, core }: { readonly facts: LineFacts; readonly core: Core }): number {
  const { opening, closing } = facts.duty;
  const chance = Math.min(
    chanceAtMost({ value: opening.starting, limit: core.figures.opening.sure }),
    chanceAtMost({ value: closing.starting, limit: core.figures.closing.sure }),
  );
  return Math.round(chance * 1e6) / 1e6;
}
