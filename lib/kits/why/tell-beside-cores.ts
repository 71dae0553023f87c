/*
 * What a rule on grips or restraints of a conflict refuses, beside the cores that come nearest to passing.
 * Invariant: the nearest cores are those that break the fewest rules of the conflict, then fall least short, then come first.
 * Not here: core rules (tell-cores.ts).
 * Read next: near-cores.ts, tell-conflict.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { Core, LineFacts } from '#lib/rules/facts.ts';
import { findingOf } from '#lib/rules/rule.ts';
import { reactionFigures, reactionsOf } from '../chain/reactions.ts';
import { couples } from '../grips/extension-chains.ts';
import type { ClassQuestion } from '../search-class.ts';
import { nearCores } from './near-cores.ts';
import type { RefusedPart } from './refused-part.ts';

/** Cores nearest to fitting that are looked at for what they would be joined to. */
const NEAREST_CORES = 8;

export function tellBesideCores(
  question: ClassQuestion,
  { id, conflict }: { readonly id: string; readonly conflict: readonly string[] },
): readonly RefusedPart[] {
  const gripRule = RULES_OF.grip.find((one) => one.id === id);
  const reactionRule = RULES_OF.reaction.find((one) => one.id === id);
  if (gripRule === undefined && reactionRule === undefined) return [];
  const { table, alike, passes, count } = nearCores(question, conflict);
  return alike
    .flatMap((one) => {
      const short = table.shortfall(one);
      return one.heads.map((at) => ({ one, at, broken: count(one, at) + short }));
    })
    .sort((a, b) => a.broken - b.broken || a.at.place - b.at.place)
    .slice(0, NEAREST_CORES)
    .flatMap(({ one, at, broken }) => {
      const near = { core: { ...table.core(one, at), counter: null }, broken };
      if (gripRule !== undefined) return tellGrips(question, { ...near, rule: gripRule });
      return reactionRule === undefined ? [] : tellReactions(question, { ...near, rule: reactionRule, passes });
    });
}

function tellGrips(
  { facts, stock, frames }: ClassQuestion,
  at: { readonly core: Core; readonly broken: number; readonly rule: (typeof RULES_OF.grip)[number] },
): readonly RefusedPart[] {
  const { core, broken, rule } = at;
  return sideAdapters(facts, stock.adapters).flatMap((adapter): readonly RefusedPart[] => {
    const refused = frames.chains.all
      .filter((chain) => chain.length <= 1 && couples(chain, adapter.facts.input))
      .map((extensions) => ({ ...facts, core, adapter, extensions }))
      .find((gripFacts) => rule.speaks(gripFacts));
    if (refused === undefined) return [];
    const lacking = 1 / (1 + adapter.facts.torqueRating);
    return [{ finding: () => findingOf(rule, refused), part: adapter.number, broken: broken + lacking }];
  });
}

export const sideAdapters = (
  facts: LineFacts,
  adapters: ClassQuestion['stock']['adapters'],
): ClassQuestion['stock']['adapters'] =>
  adapters.filter(
    (adapter) => (facts.duty.grip.kind === 'wheel' ? adapter.facts.wheel : adapter.facts.sockets) !== undefined,
  );

function tellReactions(
  { facts, stock }: ClassQuestion,
  at: {
    readonly core: Core;
    readonly broken: number;
    readonly rule: (typeof RULES_OF.reaction)[number];
    readonly passes: (part: Model | null) => boolean;
  },
): readonly RefusedPart[] {
  const { core, broken, rule } = at;
  return reactionsOf({ restraints: stock.restraints.filter(at.passes), stock, facts }).flatMap(
    (one): readonly RefusedPart[] => {
      const reaction = reactionFigures({ core, restraint: one.restraint });
      const reactionFacts = { ...facts, core, ...one, reaction };
      if (!rule.speaks(reactionFacts)) return [];
      const lacking = 1 / (1 + one.restraint.facts.torqueRating);
      return [{ finding: () => findingOf(rule, reactionFacts), part: one.restraint.number, broken: broken + lacking }];
    },
  );
}
