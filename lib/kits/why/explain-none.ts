/*
 * Why nothing fits a line: a smallest set of rules that cannot all hold, in sentences with part and number, and repairs.
 * Invariant: with only the rules that are named switched on the line still cannot be served; without any one of them it can.
 * Not here: the search for conflicts itself (solver/minimal-conflict.ts).
 * Read next: tell-conflict.ts, repairs.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { findingOf } from '#lib/rules/rule.ts';
import { minimalConflict } from '#lib/solver/minimal-conflict.ts';
import { ALL_REFUSALS } from '../refusals.ts';
import type { ClassQuestion } from '../search-class.ts';
import type { KitConstraints } from '../wishes.ts';
import { BACKGROUND, couldServeWith } from './conflict-table.ts';
import { conflictTree, findingTree } from './conflict-tree.ts';
import type { Reason } from './reason.ts';
import { findRepairs, type Repair } from './repairs.ts';
import { tellConflict } from './tell-conflict.ts';

export interface WhyNone {
  readonly because: readonly Finding[];
  readonly repairs: readonly Repair[];
  /** The same as a tree of facts, rules and parts; where it was asked for in full. */
  readonly reasons?: Reason;
}

/**
 * `in full` adds the tree and pairs of repairs: some milliseconds, for one line that is looked at.
 * `not at all` is for trials that only ask whether anything fits.
 */
export type ToldHow = 'not at all' | 'in short' | 'in full';

export function explainNone({
  question,
  models,
  constraints,
  how = 'in short',
}: {
  readonly question: ClassQuestion;
  readonly models: readonly Model[];
  readonly constraints: KitConstraints;
  readonly how?: ToldHow | undefined;
}): WhyNone {
  if (how === 'not at all') return { because: [], repairs: [] };
  const { facts } = question;
  const depth = how === 'in full' ? 'pairs too' : 'single changes';
  const onLine = ALL_REFUSALS.line.filter((rule) => rule.speaks(facts));
  if (onLine.length > 0) {
    const because = onLine.map((rule) => findingOf(rule, facts));
    return {
      because,
      repairs: [],
      ...(how === 'in full' ? { reasons: treeOf(facts, findingTree(facts, because)) } : {}),
    };
  }
  const conflict = conflictOf(question);
  const because = conflict === null ? [] : tellConflict({ question, conflict });
  const wished = wishFinding(question);
  const wish = wished === null ? [] : [wished];
  return {
    because: [...wish, ...because],
    repairs: findRepairs({ question, conflict: conflict ?? [], models, constraints, depth }),
    ...(how === 'in full'
      ? {
          reasons: treeOf(facts, [
            ...findingTree(facts, wish),
            ...conflictTree({ question, conflict: conflict ?? [] }),
          ]),
        }
      : {}),
  };
}

function treeOf({ line }: LineFacts, children: readonly Reason[]): Reason {
  const sentence =
    children.length === 1
      ? `Nothing the house has serves ${line.tag}, for one reason.`
      : `Nothing the house has serves ${line.tag}: ${children.length} things cannot all hold, and without any one of them they could.`;
  return { kind: 'answer', sentence, children };
}

/** Rules that cannot all hold; null when they can, empty when no couplings join at all. */
export function conflictOf(question: ClassQuestion): readonly string[] | null {
  const could = couldServeWith(question);
  const all = Object.values(ALL_REFUSALS).flatMap((rules: readonly { readonly id: string }[]) =>
    rules.map((rule) => rule.id).filter((id) => !BACKGROUND.has(id)),
  );
  // A search that found nothing was ended by the rules that refused something in it; the others say nothing here.
  const refusing = all.filter((id) => question.tally.refusing.has(id));
  const ids = refusing.length > 0 && !could(new Set(refusing)) ? refusing : all;
  if (!could(new Set())) return [];
  // One rule that is enough by itself is the plainest answer; where that is quickly asked it is asked first.
  const alone = ids.find((id) => QUICKLY_ASKED.has(id) && !could(new Set([id])));
  if (alone !== undefined) return [alone];
  return minimalConflict({ items: ids, possible: (kept) => could(new Set(kept)) }).conflict;
}

/** Rules that look at no core. */
const QUICKLY_ASKED: ReadonlySet<string> = new Set(
  [...ALL_REFUSALS.part, ...ALL_REFUSALS.link, ...ALL_REFUSALS.case].map(({ id }) => id),
);

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
