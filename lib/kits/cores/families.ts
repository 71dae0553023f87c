/*
 * Families: cores with equal grips and restraints, made into alternatives with needs, time and chance.
 * Invariant: an alternative that is left out needs at least what a kept one needs, takes no less time and has no better chance.
 * Not here: finding what fits (../search-class.ts).
 * Read next: ../find-choices.ts.
 */
import type { Alternative, ChoiceFamily, ItemNeed } from '#lib/equipment/choices.ts';
import type { OptionModel } from '#lib/equipment/model.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import type { Seconds } from '#lib/units/quantity.ts';
import { coreAccessories, gripAccessories } from '../carried/chain-accessories.ts';
import { coreTime, counterTime, gripTime, reactionTime } from '../chain/chain-times.ts';
import type { Grip } from '../grips/grip-finder.ts';
import type { FoundCore } from '../search-class.ts';
import type { StockByRole } from '../stock-by-role.ts';
import { coreId, gripId, reactionId } from './alternative-ids.ts';
import { coreChance } from './core-chance.ts';

/** Alternatives of one slot for a core; equal ones are one object, so that cores are compared by identity. */
type Kept = readonly Alternative[];

interface ShelfCore {
  readonly alternative: Alternative;
  readonly drive: string;
  readonly head: string;
  readonly grips: Kept;
  readonly reactions: Kept;
  readonly counters: Kept;
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
  const grips = shelf((grip: Grip) => gripAlternative({ facts, stock, grip }));
  const reactions = shelf((reaction: FoundCore['reactions'][number]) =>
    reactionAlternative(reactionId(reaction), reaction),
  );
  const counters = shelf(counterAlternative);
  const cores = found.map((one): ShelfCore => {
    const { core } = one;
    return {
      alternative: coreAlternative({ facts, stock, core }),
      drive: core.drive.number,
      head: core.head.number,
      grips: grips(one.grips),
      reactions: reactions(one.reactions),
      counters: counters(one.counters),
    };
  });
  return group(withoutDominatedCores(cores));
}

/** Makes alternatives once for each part, and keeps of each list what no other in it dominates. */
function shelf<Part>(make: (part: Part) => Alternative): (parts: readonly (Part | null)[]) => Kept {
  const made = new Map<Part, Alternative>();
  const byList = new Map<readonly (Part | null)[], Kept>();
  const byIds = new Map<string, Kept>();
  return (parts) => {
    const known = byList.get(parts);
    if (known !== undefined) return known;
    const alternatives = parts.flatMap((part) => {
      if (part === null) return [];
      const alternative = made.get(part) ?? make(part);
      made.set(part, alternative);
      return [alternative];
    });
    const kept = withoutDominated(alternatives);
    const key = kept.map(({ id }) => id).join(';');
    const shared = byIds.get(key) ?? kept;
    byIds.set(key, shared);
    byList.set(parts, shared);
    return shared;
  };
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
    better.needs.length > worse.needs.length ||
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
function withoutDominatedCores(cores: readonly ShelfCore[]): readonly ShelfCore[] {
  const groups = new Map<string, ShelfCore[]>();
  const groupOf = cores.map((core) => {
    const key = `${core.drive}|${core.head}`;
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(core);
    return group;
  });
  const within = remembered(isWithin);
  return cores.filter(
    (worse, index) =>
      groupOf[index]?.some(
        (better) =>
          better !== worse &&
          isNoBetter(worse.alternative, better.alternative) &&
          within(worse.grips, better.grips) &&
          within(worse.reactions, better.reactions) &&
          within(worse.counters, better.counters),
      ) !== true,
  );
}

function isWithin(a: Kept, b: Kept): boolean {
  const ids = new Set(b.map(({ id }) => id));
  return a.every(({ id }) => ids.has(id));
}

/** Answers a question on two lists once. */
function remembered(ask: (a: Kept, b: Kept) => boolean): (a: Kept, b: Kept) => boolean {
  const answers = new Map<Kept, Map<Kept, boolean>>();
  return (a, b) => {
    if (a === b) return true;
    const ofA = answers.get(a) ?? new Map<Kept, boolean>();
    answers.set(a, ofA);
    const answer = ofA.get(b) ?? ask(a, b);
    ofA.set(b, answer);
    return answer;
  };
}

function group(cores: readonly ShelfCore[]): readonly ChoiceFamily[] {
  const families = new Map<Kept, Map<Kept, Map<Kept, ShelfCore[]>>>();
  const inOrder: ShelfCore[][] = [];
  for (const core of cores) {
    const ofGrips = families.get(core.grips) ?? new Map<Kept, Map<Kept, ShelfCore[]>>();
    families.set(core.grips, ofGrips);
    const ofReactions = ofGrips.get(core.reactions) ?? new Map<Kept, ShelfCore[]>();
    ofGrips.set(core.reactions, ofReactions);
    const family = ofReactions.get(core.counters);
    if (family !== undefined) family.push(core);
    else {
      const started = [core];
      ofReactions.set(core.counters, started);
      inOrder.push(started);
    }
  }
  return inOrder.flatMap((family, index) => {
    const [first] = family;
    if (first === undefined) return [];
    return [
      {
        id: `f${index + 1}`,
        cores: family.map(({ alternative }) => alternative),
        slots: [first.grips, first.reactions, ...(first.counters.length === 0 ? [] : [first.counters])],
      },
    ];
  });
}
