/*
 * Why nothing fits a line: a smallest set of rules that cannot all hold, in sentences with part and number, and repairs.
 * Invariant: with only the rules that are named switched on the line still cannot be served; without any one of them it can.
 * Not here: the search for conflicts itself (solver/minimal-conflict.ts).
 * Read next: tell-conflict.ts, repairs.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { findingOf } from '#lib/rules/rule.ts';
import { minimalConflict } from '#lib/solver/minimal-conflict.ts';
import { BACKGROUND, couldServeWith } from './conflict-table.ts';
import { ALL_REFUSALS } from './refusals.ts';
import { findRepairs, type Repair } from './repairs.ts';
import type { ClassQuestion } from './search-class.ts';
import { tellConflict } from './tell-conflict.ts';
import type { KitConstraints } from './wishes.ts';

export interface WhyNone {
  readonly because: readonly Finding[];
  readonly repairs: readonly Repair[];
}

export function explainNone({
  question,
  models,
  constraints,
}: {
  readonly question: ClassQuestion;
  readonly models: readonly Model[];
  readonly constraints: KitConstraints;
}): WhyNone {
  const onLine = ALL_REFUSALS.line.filter((rule) => rule.speaks(question.facts));
  if (onLine.length > 0) {
    return { because: onLine.map((rule) => findingOf(rule, question.facts)), repairs: [] };
  }
  const conflict = conflictOf(question);
  const because = conflict === null ? [] : tellConflict({ question, conflict });
  const wished = wishFinding(question);
  return {
    because: wished === null ? because : [wished, ...because],
    repairs: findRepairs({ question, conflict: conflict ?? [], models, constraints }),
  };
}

/** Rules that cannot all hold; null when they can, empty when no couplings join at all. */
export function conflictOf(question: ClassQuestion): readonly string[] | null {
  const could = couldServeWith(question);
  const ids = Object.values(ALL_REFUSALS).flatMap((rules: readonly { readonly id: string }[]) =>
    rules.map((rule) => rule.id).filter((id) => !BACKGROUND.has(id)),
  );
  return minimalConflict({ items: ids, possible: (kept) => could(new Set(kept)) }).conflict;
}

function wishFinding({ wishes, facts }: ClassQuestion): Finding | null {
  if (wishes.length === 0) return null;
  const numbers = wishes.map((model) => model.number);
  return {
    id: 'wished-part',
    severity: 'refusal',
    about: numbers,
    sentence: `${facts.line.tag} is held to ${numbers.join(', ')} by a pin or lock; nothing else is looked at.`,
    source: 'A person’s choice',
  };
}
