/*
 * The refusals among the rules, by scope, and the first that speaks; a subset of them can be switched on alone.
 * Invariant: every question to a rule is counted; the couplings rule is background that is never switched off.
 * Not here: sentences (rules) and domains (search-class.ts).
 * Read next: search-class.ts.
 */
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { FactsOf, Scope } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';

export interface Refusals {
  readonly line: readonly RuleOf<'line'>[];
  readonly part: readonly RuleOf<'part'>[];
  readonly link: readonly RuleOf<'link'>[];
  readonly case: readonly RuleOf<'case'>[];
  readonly core: readonly RuleOf<'core'>[];
  readonly grip: readonly RuleOf<'grip'>[];
  readonly reaction: readonly RuleOf<'reaction'>[];
}

const refuses = (rule: { readonly severity: string }): boolean => rule.severity === 'refusal';

export const ALL_REFUSALS: Refusals = {
  line: RULES_OF.line.filter(refuses),
  part: RULES_OF.part.filter(refuses),
  link: RULES_OF.link.filter(refuses),
  case: RULES_OF.case.filter(refuses),
  core: RULES_OF.core.filter(refuses),
  grip: RULES_OF.grip.filter(refuses),
  reaction: RULES_OF.reaction.filter(refuses),
};

/** Work done, counted over a whole request. */
export interface Tally {
  evaluations: number;
  cores: number;
  pairs: number;
  /** Rules that refused something: they alone refuse what all of them refuse. */
  refusing: Set<string>;
}

export const newTally = (): Tally => ({ evaluations: 0, cores: 0, pairs: 0, refusing: new Set() });

export function isAllowed<S extends Scope>(rules: readonly RuleOf<S>[], facts: FactsOf[S], tally: Tally): boolean {
  for (const rule of rules) {
    tally.evaluations += 1;
    if (!rule.speaks(facts)) continue;
    tally.refusing.add(rule.id);
    return false;
  }
  return true;
}
