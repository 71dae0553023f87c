/*
 * Finds the house rule of a kind that something breaks, and says it in the words it was agreed in.
 * Invariant: the first rule that is broken speaks.
 * Not here: what each kind decides (house.ts, house-parts.ts).
 * Read next: house.ts.
 */
import type { HouseRule, Site } from '#lib/duty/site.ts';
import { figure } from '#lib/units/say-figure.ts';
import { besideIt } from '#lib/units/us-beside.ts';

export const SOURCE = 'house rule';

type Breaks = (value: string) => boolean;

export function brokenRule(
  facts: { readonly site: Pick<Site, 'houseRules'> },
  ...[kind, breaks]: readonly [kind: HouseRule['kind'], breaks: Breaks]
): HouseRule | undefined {
  return facts.site.houseRules.find((rule) => rule.kind === kind && breaks(rule.value.trim().toLowerCase()));
}

/** A house rule in the words it was agreed in. */
export function wordsOf(rule: HouseRule | undefined): string {
  const words = rule?.sentence ?? '';
  return figure({ si: words, us: besideIt(words) });
}

/** A site with one rule, for examples. */
export function siteWith(kind: HouseRule['kind'], value: string): Pick<Site, 'houseRules'> {
  return { houseRules: [{ id: 'sample', kind, value, sentence: `Sample house rule: ${kind} ${value}.` }] };
}
