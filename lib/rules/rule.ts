/*
 * What a rule is: data, one pure predicate, a sentence built from the facts it used, a source, and examples that run.
 * Invariant: a rule that speaks has exactly one severity; refusals exclude, warnings and notes travel with the assembly.
 * Not here: the rules (one file a topic) and who asks them (kits, checking).
 * Read next: all-rules.ts, facts.ts.
 */
import type { Finding, Severity } from '#lib/kernel/finding.ts';
import { tell } from '#lib/units/say-figure.ts';
import type { FactsOf, Scope } from './facts.ts';

export const TOPICS = [
  'stem',
  'wheel',
  'no wheel',
  'buried',
  'reach and room',
  'torque',
  'restraint',
  'place',
  'method',
  'counting',
  'people',
  'house',
  'couplings',
] as const;
export type Topic = (typeof TOPICS)[number];

export interface Example<Facts> {
  readonly name: string;
  readonly facts: Facts;
  readonly speaks: boolean;
}

export interface RuleOf<S extends Scope> {
  /** Stable, kebab-case. */
  readonly id: string;
  readonly topic: Topic;
  readonly title: string;
  readonly scope: S;
  readonly severity: Severity;
  /** A standard, a handbook, `common practice, no source`, or `house rule`. */
  readonly source: string;
  /** Roles and fields that it looks at. */
  readonly speaksOf: readonly string[];
  /** True when the rule has something to say of these facts. */
  readonly speaks: (facts: FactsOf[S]) => boolean;
  readonly sentence: (facts: FactsOf[S]) => string;
  /** At least one that speaks and one that does not; a thunk, so that listing rules builds no samples. */
  readonly examples: () => readonly Example<FactsOf[S]>[];
}

export type Rule = { [S in Scope]: RuleOf<S> }[Scope];

export function judge<S extends Scope>(rule: RuleOf<S>, facts: FactsOf[S]): Finding | null {
  return rule.speaks(facts) ? findingOf(rule, facts) : null;
}

/** The finding of a rule that is known to speak. */
export function findingOf<S extends Scope>(rule: RuleOf<S>, facts: FactsOf[S]): Finding {
  return {
    id: rule.id,
    severity: rule.severity,
    about: [...rule.speaksOf, ...partNumbers(facts)],
    ...tell(rule.sentence(facts)),
    source: rule.source,
  };
}

/** Numbers of the parts that the facts hold. */
function partNumbers(facts: FactsOf[Scope]): readonly string[] {
  if ('part' in facts) return [facts.part.number];
  if ('upstream' in facts) return [facts.upstream.number, facts.downstream.number];
  if ('gripCase' in facts) return [facts.adapter.number];
  const numbers: string[] = [];
  if ('core' in facts) {
    const { drive, head } = facts.core;
    numbers.push(drive.number, head.number);
    if ('limiter' in facts.core) {
      for (const option of [facts.core.limiter, facts.core.counter]) if (option !== null) numbers.push(option.number);
    }
  }
  if ('extensions' in facts) numbers.push(...facts.extensions.map((extension) => extension.number));
  if ('adapter' in facts) numbers.push(facts.adapter.number);
  if ('links' in facts) {
    for (const { adapter, extensions } of facts.links) {
      numbers.push(...extensions.map((extension) => extension.number), adapter.number);
    }
  }
  if ('restraint' in facts) numbers.push(facts.restraint.number);
  return numbers;
}
