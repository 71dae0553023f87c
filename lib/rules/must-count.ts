/*
 * Whether the turns of a line must be counted: because of the valve, or because the house says so.
 * Invariant: a stroke that may take more turns than a house rule names is counted.
 * Not here: which counter (kits) and the sentences (counting.ts, house-parts.ts).
 * Read next: counting.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { HouseRule, Site } from '#lib/duty/site.ts';
import { brokenRule } from './broken-rule.ts';

interface Counted {
  readonly duty: Pick<Duty, 'turns' | 'countTurns'>;
  readonly site: Pick<Site, 'houseRules'>;
}

export function mustCount(facts: Counted): boolean {
  return facts.duty.countTurns || countingRule(facts) !== undefined;
}

/** The house rule that asks for counting here. */
export function countingRule(facts: Counted): HouseRule | undefined {
  return brokenRule(facts, 'counter-above-turns', (value) => facts.duty.turns.high > Number.parseFloat(value));
}
