/*
 * Families: cores with equal grips and restraints, made into alternatives with needs, time and chance.
 * Invariant: an alternative that is left out needs at least what a kept one needs, takes no less time and has no better chance.
 * Not here: finding what fits (search-class.ts).
 * Read next: find-choices.ts.
 */
import type { Alternative, ChoiceFamily, ItemNeed } from '#lib/equipment/choices.ts';
import type { OptionModel } from '#lib/equipment/model.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import type { Seconds } from '#lib/units/quantity.ts';
import { coreId, gripId, reactionId } from './alternative-ids.ts';
import { coreAccessories, gripAccessories } from './chain-accessories.ts';
import { coreTime, counterTime, gripTime, reactionTime } from './chain-times.ts';
import { coreChance } from './core-chance.ts';
import type { Grip } from './grip-finder.ts';
import type { FoundCore } from './search-class.ts';
import type { StockByRole } from './stock-by-role.ts';

interface Shelf {
  readonly cores: {
    readonly alternative: Alternative;
    readonly grips: ReadonlySet<string>;
    readonly reactions: ReadonlySet<string>;
    readonly counters: ReadonlySet<string>;
  }[];
  readonly grips: Map<string, Alternative>;
  readonly reactions: Map<string, Alternative>;
  readonly counters: Map<string, Alternative>;
}

export function familiesOf({
  facts,
  stock,
  found,
}: {
  readonly facts: LineFacts;
  readonly stock: StockByRole;
  readonly found: readonly FoundCore[];
}): readonly ChoiceFamily[] {
  const shelf: Shelf = { cores: [], grips: new Map(), reactions: new Map(), counters: new Map() };
  const gripIds = new Map<readonly Grip[], ReadonlySet<string>>();
  const reactionIds = new Map<FoundCore['reactions'], ReadonlySet<string>>();
  for (const { core, grips, reactions, counters } of found) {
    for (const counter of counters) {
      if (counter !== null) shelf.counters.set(counter.number, counterAlternative(counter));
    }
    const known = gripIds.get(grips) ?? keptGrips({ facts, stock, grips, shelf });
    gripIds.set(grips, known);
    const held = reactionIds.get(reactions) ?? keptReactions(shelf, reactions);
    reactionIds.set(reactions, held);
    shelf.cores.push({
      alternative: coreAlternative({ facts, stock, core }),
      grips: known,
      reactions: held,
      counters: keptCounters(shelf, counters),
    });
  }
  return group({ ...shelf, cores: withoutDominatedCores(shelf.cores) });
}

function keptGrips(at: {
  readonly facts: LineFacts;
  readonly stock: StockByRole;
  readonly grips: readonly Grip[];
  readonly shelf: Shelf;
}): ReadonlySet<string> {
  const alternatives = at.grips.map((grip) => gripAlternative({ facts: at.facts, stock: at.stock, grip }));
  const kept = withoutDominated(alternatives);
  for (const alternative of kept) at.shelf.grips.set(alternative.id, alternative);
  return new Set(kept.map(({ id }) => id));
}

function keptReactions(shelf: Shelf, reactions: FoundCore['reactions']): ReadonlySet<string> {
  const alternatives = reactions.map((reaction) => {
    const id = reactionId(reaction);
    const known = shelf.reactions.get(id) ?? reactionAlternative(id, reaction);
    shelf.reactions.set(id, known);
    return known;
  });
  return new Set(withoutDominated(alternatives).map(({ id }) => id));
}

function coreAlternative(at: {
  readonly facts: LineFacts;
  readonly stock: StockByRole;
  readonly core: FoundCore['core'];
}): Alternative {
  const { core, facts } = at;
  const accessories = coreAccessories(at);
  const parts = [core.drive, core.head, core.limiter].flatMap((part) => (part === null ? [] : [part.number]));
  return alternative(
    coreId(core, accessories),
    [...parts, ...accessories].map(one),
    coreTime({ facts, core }),
    coreChance({ facts, core }),
  );
}

function gripAlternative(at: {
  readonly facts: LineFacts;
  readonly stock: StockByRole;
  readonly grip: Grip;
}): Alternative {
  const { elements } = at.grip;
  const accessories = gripAccessories(at);
  const needs = [
    ...[...new Set(elements.map(({ adapter }) => adapter.number))].map(one),
    ...largestEach(elements.map(({ extensions }) => countEach(extensions.map((extension) => extension.number)))),
    ...accessories.map(({ number, count }) => ({ item: number, count })),
  ];
  return alternative(gripId(elements, accessories), needs, gripTime({ elements }), 1);
}

function reactionAlternative(id: string, reaction: FoundCore['reactions'][number]): Alternative {
  const { restraint, secondChain } = reaction;
  const needs = [one(restraint.number), ...(secondChain === null ? [] : [one(secondChain.number)])];
  return alternative(id, needs, reactionTime(reaction), 1);
}

function counterAlternative(counter: OptionModel): Alternative {
  return alternative(counter.number, [one(counter.number)], counterTime(counter), 1);
}

function keptCounters(shelf: Shelf, counters: FoundCore['counters']): ReadonlySet<string> {
  const there = counters.flatMap((counter) => (counter === null ? [] : (shelf.counters.get(counter.number) ?? [])));
  return new Set(withoutDominated(there).map(({ id }) => id));
}

const one = (item: string): ItemNeed => ({ item, count: 1 });

function countEach(numbers: readonly string[]): readonly ItemNeed[] {
  return [...new Set(numbers)].map((item) => ({ item, count: numbers.filter((number) => number === item).length }));
}

/** One adapter is used at a time: what several of them sit behind is carried once. */
function largestEach(groups: readonly (readonly ItemNeed[])[]): readonly ItemNeed[] {
  const counts = new Map<string, number>();
  for (const { item, count } of groups.flat()) counts.set(item, Math.max(counts.get(item) ?? 0, count));
  return [...counts].map(([item, count]) => ({ item, count }));
}

function alternative(id: string, needs: readonly ItemNeed[], timePerValve: Seconds, chance: number): Alternative {
  return { id, needs, timePerValve, cost_minor: 0, chance };
}

/** Whether everything in `a` is in `b` as well. */
function needsWithin(a: readonly ItemNeed[], b: readonly ItemNeed[]): boolean {
  return a.every((need) => b.some((other) => other.item === need.item && other.count >= need.count));
}

function isNoBetter(worse: Alternative, better: Alternative): boolean {
  if (
    better.timePerValve > worse.timePerValve ||
    better.chance < worse.chance ||
    !needsWithin(better.needs, worse.needs)
  )
    return false;
  const equal =
    better.timePerValve === worse.timePerValve &&
    better.chance === worse.chance &&
    needsWithin(worse.needs, better.needs);
  return !equal || better.id < worse.id;
}

export function withoutDominated(alternatives: readonly Alternative[]): readonly Alternative[] {
  return alternatives.filter((worse) => !alternatives.some((better) => better !== worse && isNoBetter(worse, better)));
}

/** A core is only left out for one of the same drive and head that goes with at least the same grips and restraints. */
function withoutDominatedCores(cores: Shelf['cores']): Shelf['cores'] {
  const groups = new Map<string, Shelf['cores']>();
  for (const core of cores) {
    const key = core.alternative.needs
      .slice(0, 2)
      .map((need) => need.item)
      .join('|');
    groups.set(key, [...(groups.get(key) ?? []), core]);
  }
  return cores.filter((worse) => {
    const key = worse.alternative.needs
      .slice(0, 2)
      .map((need) => need.item)
      .join('|');
    return !(groups.get(key) ?? []).some(
      (better) =>
        better !== worse &&
        isNoBetter(worse.alternative, better.alternative) &&
        isWithin(worse.grips, better.grips) &&
        isWithin(worse.reactions, better.reactions) &&
        isWithin(worse.counters, better.counters),
    );
  });
}

function isWithin(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
  return a === b || [...a].every((id) => b.has(id));
}

function group(shelf: Shelf): readonly ChoiceFamily[] {
  const families = new Map<string, { readonly first: Shelf['cores'][number]; readonly cores: Alternative[] }>();
  for (const core of shelf.cores) {
    const key = [core.grips, core.reactions, core.counters].map((ids) => [...ids].join(';')).join('#');
    const family = families.get(key);
    if (family === undefined) families.set(key, { first: core, cores: [core.alternative] });
    else family.cores.push(core.alternative);
  }
  return [...families.values()].map(({ first, cores }, index) => ({
    id: `f${index + 1}`,
    cores,
    slots: [
      [...first.grips].flatMap((id) => shelf.grips.get(id) ?? []),
      [...first.reactions].flatMap((id) => shelf.reactions.get(id) ?? []),
      ...(first.counters.size === 0 ? [] : [[...first.counters].flatMap((id) => shelf.counters.get(id) ?? [])]),
    ],
  }));
}
