/*
 * Every rule of the house in one list, and the ways to look through it.
 * Invariant: ids are unique; the order is fixed.
 * Not here: asking the rules (kits, checking).
 * Read next: rule.ts.
 */
import { BURIED_RULES } from './buried.ts';
import { COUNTING_RULES } from './counting.ts';
import { COUPLING_RULES } from './couplings.ts';
import type { Scope } from './facts.ts';
import { HOUSE_RULES } from './house.ts';
import { HOUSE_PART_RULES } from './house-parts.ts';
import { METHOD_RULES } from './method.ts';
import { NO_WHEEL_RULES } from './no-wheel.ts';
import { PART_RATING_RULES } from './part-ratings.ts';
import { PEOPLE_RULES } from './people.ts';
import { PLACE_RULES } from './place.ts';
import { PLACE_GAS_RULES } from './place-gas.ts';
import { REACH_RULES } from './reach.ts';
import { RESTRAINT_RULES } from './restraint.ts';
import { RESTRAINT_SITE_RULES } from './restraint-site.ts';
import type { Rule, RuleOf } from './rule.ts';
import { SHAFT_RULES } from './shafts.ts';
import { SPEED_RULES } from './speed.ts';
import { STEM_RULES } from './stem.ts';
import { SUPPLY_RULES } from './supply.ts';
import { TORQUE_RULES } from './torque.ts';
import { WHEEL_RULES } from './wheel.ts';

export const RULES: readonly Rule[] = [
  ...STEM_RULES,
  ...WHEEL_RULES,
  ...NO_WHEEL_RULES,
  ...BURIED_RULES,
  ...REACH_RULES,
  ...TORQUE_RULES,
  ...PART_RATING_RULES,
  ...SPEED_RULES,
  ...SHAFT_RULES,
  ...RESTRAINT_RULES,
  ...RESTRAINT_SITE_RULES,
  ...PLACE_RULES,
  ...PLACE_GAS_RULES,
  ...SUPPLY_RULES,
  ...METHOD_RULES,
  ...COUNTING_RULES,
  ...PEOPLE_RULES,
  ...HOUSE_RULES,
  ...HOUSE_PART_RULES,
  ...COUPLING_RULES,
];

/** What a person reads of a rule. */
export interface ListedRule {
  readonly id: string;
  readonly topic: string;
  readonly title: string;
  readonly scope: Scope;
  readonly severity: string;
  readonly source: string;
  readonly speaks_of: readonly string[];
}

export function listRules(): readonly ListedRule[] {
  return RULES.map(({ id, topic, title, scope, severity, source, speaksOf }) => ({
    id,
    topic,
    title,
    scope,
    severity,
    source,
    speaks_of: speaksOf,
  }));
}

/** The rules by scope, typed for their facts. */
export const RULES_OF: { readonly [S in Scope]: readonly RuleOf<S>[] } = {
  line: RULES.filter((rule) => rule.scope === 'line'),
  part: RULES.filter((rule) => rule.scope === 'part'),
  link: RULES.filter((rule) => rule.scope === 'link'),
  case: RULES.filter((rule) => rule.scope === 'case'),
  pair: RULES.filter((rule) => rule.scope === 'pair'),
  core: RULES.filter((rule) => rule.scope === 'core'),
  grip: RULES.filter((rule) => rule.scope === 'grip'),
  reaction: RULES.filter((rule) => rule.scope === 'reaction'),
  whole: RULES.filter((rule) => rule.scope === 'whole'),
};
