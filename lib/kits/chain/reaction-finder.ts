/*
 * Which restraints hold a core; found once for cores that are alike in all that matters.
 * Invariant: the same restraints come out as from asking every reaction rule about every core and restraint, one by one.
 * Not here: the pull itself (reactions.ts).
 * Read next: ../narrow-views.ts, ../cores/ranked-limits.ts.
 */
import type { HeadModel } from '#lib/equipment/model.ts';
import type { CoreView, LineFacts } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import { rankAmong, sharing } from '../cores/ranked-limits.ts';
import { REACTION_OF_HEAD, REACTION_STALL_LIMITS, REACTION_TORQUE_LIMITS } from '../narrow-views.ts';
import { isAllowed, type Tally } from '../refusals.ts';
import { type Reaction, reactionFigures } from './reactions.ts';

interface FinderInput {
  readonly facts: LineFacts;
  readonly rules: readonly RuleOf<'reaction'>[];
  readonly tally: Tally;
  readonly reactions: readonly Reaction[];
}

/** Restraints for a core; equal lists are one array. */
export function reactionFinder(input: FinderInput): (core: CoreView) => readonly Reaction[] {
  const { facts, rules, tally, reactions } = input;
  const { line, duty, site, place } = facts;
  const share = sharing();
  const limitsOf = (limits: typeof REACTION_STALL_LIMITS): readonly number[] => {
    const asked = rules.flatMap(({ id }) => limits.get(id) ?? []);
    for (const { id } of rules) if (limits.has(id)) tally.refusing.add(id);
    tally.evaluations += asked.length * reactions.length;
    return reactions.map(({ restraint }) => Math.min(...asked.map((limit) => limit(restraint))));
  };
  const stallLimits = limitsOf(REACTION_STALL_LIMITS);
  const torqueLimits = limitsOf(REACTION_TORQUE_LIMITS);
  const stallRank = rankAmong(stallLimits);
  const torqueRank = rankAmong(torqueLimits);
  const asks = (some: readonly RuleOf<'reaction'>[], core: CoreView, position: number): boolean => {
    const one = reactions[position];
    if (one === undefined) return false;
    const { restraint, secondChain } = one;
    const reaction = reactionFigures({ core, restraint });
    return isAllowed(some, { line, duty, site, place, core, restraint, secondChain, reaction }, tally);
  };
  const headRules = rules.filter(({ id }) => REACTION_OF_HEAD.has(id));
  const rest = rules.filter(
    ({ id }) => !REACTION_OF_HEAD.has(id) && !REACTION_STALL_LIMITS.has(id) && !REACTION_TORQUE_LIMITS.has(id),
  );
  const ofHead = new Map<HeadModel, readonly number[]>();
  const found = new Map<readonly number[], Map<number, readonly number[]>>();
  const lists = new Map<readonly number[], readonly Reaction[]>();
  return (core) => {
    const from = ofHead.get(core.head) ?? share([...reactions.keys()].filter((one) => asks(headRules, core, one)));
    ofHead.set(core.head, from);
    const { stallAtValve, highestAtValve } = core.figures;
    const rank = stallRank(stallAtValve) * 100_000 + torqueRank(highestAtValve);
    const byRank = found.get(from) ?? new Map<number, readonly number[]>();
    found.set(from, byRank);
    let held = byRank.get(rank);
    if (held === undefined) {
      tally.pairs += from.length;
      held = share(
        from.filter((one) => !(stallAtValve > (stallLimits[one] ?? 0)) && !(highestAtValve > (torqueLimits[one] ?? 0))),
      );
      byRank.set(rank, held);
    }
    if (rest.length > 0) held = share(held.filter((one) => asks(rest, core, one)));
    const known = lists.get(held) ?? held.flatMap((one) => reactions[one] ?? []);
    lists.set(held, known);
    return known;
  };
}
