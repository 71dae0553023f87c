/*
 * Which grip elements a core may drive, and the covering sets they make; found once for cores that are alike in all that matters.
 * Invariant: the same elements come out as from asking every grip rule about every core and element, one by one.
 * Not here: which cases an element takes (grip-elements.ts) and which sets cover (covers.ts).
 * Read next: ../narrow-views.ts, ../cores/ranked-limits.ts.
 */
import { type Coupling, joins } from '#lib/equipment/coupling.ts';
import type { HeadModel } from '#lib/equipment/model.ts';
import type { CoreView, GripCase, LineFacts } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import { type RankOf, rankAmong, sharing } from '../cores/ranked-limits.ts';
import { GRIP_OF_HEAD, GRIP_SPEED_LIMITS, GRIP_TORQUE_LIMITS } from '../narrow-views.ts';
import { isAllowed, type Tally } from '../refusals.ts';
import { findCovers } from './covers.ts';
import type { GripElement } from './grip-elements.ts';

/** Adapters that together take every size, each behind its extensions; the one that takes the likeliest size first. */
export interface Grip {
  readonly elements: readonly GripElement[];
}

export interface GripFinder {
  /** Whether what joins an output could take every case, were it strong enough. */
  readonly mayCover: (output: Coupling) => boolean;
  /** Covering sets that a core may drive, remembered by what is there: equal sets are one array. */
  readonly gripsFor: (core: CoreView, output: Coupling) => readonly Grip[];
  /** Whether what a core may drive takes every case, in however large a set. */
  readonly canGrip: (core: CoreView, output: Coupling) => boolean;
}

interface FinderInput {
  readonly facts: LineFacts;
  readonly rules: readonly RuleOf<'grip'>[];
  readonly tally: Tally;
  readonly elements: readonly GripElement[];
  readonly cases: readonly GripCase[];
}

/** Elements that join one output. */
interface Joined {
  readonly positions: readonly number[];
  readonly mayCover: boolean;
  readonly torqueRank: RankOf;
  readonly speedRank: RankOf;
  /** For each head what its own rules let pass; equal lists are one array. */
  readonly ofHead: Map<HeadModel, readonly number[]>;
  /** By list and rank. */
  readonly found: Map<readonly number[], Map<number, readonly number[]>>;
}

export function gripFinder(input: FinderInput): GripFinder {
  const { facts, rules, tally, elements } = input;
  const all = (1n << BigInt(input.cases.length)) - 1n;
  const share = sharing();
  const limits = limitsOf(input);
  const byKey = new Map<string, Joined>();
  const byCoupling = new Map<Coupling, Joined>();
  const joinedTo = (output: Coupling): Joined => {
    const known = byCoupling.get(output);
    if (known !== undefined) return known;
    const key = `${output.form} ${output.size} ${output.gender}`;
    const joined = byKey.get(key) ?? joinedOf(elements, { output, all, limits });
    byKey.set(key, joined);
    byCoupling.set(output, joined);
    return joined;
  };
  const ofHead = headFilter(input, share);
  const rest = rules.filter(
    ({ id }) => !GRIP_OF_HEAD.has(id) && !GRIP_TORQUE_LIMITS.has(id) && !GRIP_SPEED_LIMITS.has(id),
  );
  const { line, duty, site, place } = facts;
  const passesRest = (core: CoreView, position: number): boolean => {
    const element = elements[position];
    if (element === undefined) return false;
    const { adapter, extensions } = element;
    return isAllowed(rest, { line, duty, site, place, core, adapter, extensions }, tally);
  };
  const covers = coverFinder(input, all);
  const fitting = (core: CoreView, output: Coupling): readonly number[] => {
    const joined = joinedTo(output);
    const held = heldBy({ joined, limits, core, from: ofHead(core, joined), tally, share });
    return rest.length === 0 ? held : share(held.filter((position) => passesRest(core, position)));
  };
  const unions = new Map<readonly number[], boolean>();
  return {
    mayCover: (output) => joinedTo(output).mayCover,
    gripsFor: (core, output) => covers(fitting(core, output)),
    canGrip: (core, output) => {
      const positions = fitting(core, output);
      const known =
        unions.get(positions) ??
        positions.reduce((union, position) => union | (elements[position]?.takes ?? 0n), 0n) === all;
      unions.set(positions, known);
      return known;
    },
  };
}

interface Limits {
  readonly torque: Float64Array;
  readonly speed: Float64Array;
}

/** Up to what torque and speed each element may be driven. */
function limitsOf({ rules, elements, tally }: FinderInput): Limits {
  const least = (limits: typeof GRIP_TORQUE_LIMITS): Float64Array => {
    const asked = rules.flatMap(({ id }) => limits.get(id) ?? []);
    for (const { id } of rules) if (limits.has(id)) tally.refusing.add(id);
    tally.evaluations += asked.length * elements.length;
    return Float64Array.from(elements, (element) =>
      asked.reduce((lowest, limit) => Math.min(lowest, limit(element)), Number.POSITIVE_INFINITY),
    );
  };
  return { torque: least(GRIP_TORQUE_LIMITS), speed: least(GRIP_SPEED_LIMITS) };
}

function joinedOf(
  elements: readonly GripElement[],
  { output, all, limits }: { readonly output: Coupling; readonly all: bigint; readonly limits: Limits },
): Joined {
  const positions: number[] = [];
  let union = 0n;
  for (const [position, element] of elements.entries()) {
    if (!joins(output, element.input)) continue;
    positions.push(position);
    union |= element.takes;
  }
  const ofThese = (of: Float64Array): readonly number[] => positions.map((position) => of[position] ?? 0);
  return {
    positions,
    mayCover: union === all,
    torqueRank: rankAmong(ofThese(limits.torque)),
    speedRank: rankAmong(ofThese(limits.speed)),
    ofHead: new Map(),
    found: new Map(),
  };
}

/** What the rules on head and grip alone let pass, for each head once. */
function headFilter(
  { facts, rules, elements, tally }: FinderInput,
  share: (positions: readonly number[]) => readonly number[],
): (core: CoreView, joined: Joined) => readonly number[] {
  const asked = rules.filter(({ id }) => GRIP_OF_HEAD.has(id));
  const { line, duty, site, place } = facts;
  return (core, joined) => {
    const known = joined.ofHead.get(core.head);
    if (known !== undefined) return known;
    const passing = joined.positions.filter((position) => {
      const element = elements[position];
      if (element === undefined) return false;
      const { adapter, extensions } = element;
      return isAllowed(asked, { line, duty, site, place, core, adapter, extensions }, tally);
    });
    const shared = share(passing);
    joined.ofHead.set(core.head, shared);
    return shared;
  };
}

/** What carries a core's torque and speed; cores of one rank are alike to every element. */
function heldBy(at: {
  readonly joined: Joined;
  readonly limits: Limits;
  readonly core: CoreView;
  readonly from: readonly number[];
  readonly tally: Tally;
  readonly share: (positions: readonly number[]) => readonly number[];
}): readonly number[] {
  const { joined, limits, core, from } = at;
  const { highestAtValve, opening, closing } = core.figures;
  const fastest = Math.max(opening.fastest, closing.fastest);
  const rank = joined.torqueRank(highestAtValve) * 100_000 + joined.speedRank(fastest);
  const byRank = joined.found.get(from) ?? new Map<number, readonly number[]>();
  joined.found.set(from, byRank);
  const known = byRank.get(rank);
  if (known !== undefined) return known;
  at.tally.pairs += from.length;
  const held = from.filter(
    (position) => !(highestAtValve > (limits.torque[position] ?? 0)) && !(fastest > (limits.speed[position] ?? 0)),
  );
  const shared = at.share(held);
  byRank.set(rank, shared);
  return shared;
}

/** Covering sets of the elements that a core may drive; the same elements in two sets are one grip. */
function coverFinder({ elements, cases }: FinderInput, all: bigint): (fitting: readonly number[]) => readonly Grip[] {
  const likeliest = 1n << BigInt(Math.max(0, cases.length - 1));
  const takesIt = (element: GripElement): boolean => (element.takes & likeliest) !== 0n;
  const remembered = new Map<readonly number[], readonly Grip[]>();
  const made = new Map<string, Grip>();
  return (fitting) => {
    const known = remembered.get(fitting);
    if (known !== undefined) return known;
    const there = fitting.map((position) => elements[position]?.takes ?? 0n);
    const grips = findCovers({ takes: there, all }).map((cover) => {
      const positions = cover.map((index) => fitting[index] ?? 0);
      const key = positions.join(' ');
      const grip = made.get(key) ?? { elements: likeliestFirst(positions) };
      made.set(key, grip);
      return grip;
    });
    remembered.set(fitting, grips);
    return grips;
  };
  function likeliestFirst(positions: readonly number[]): readonly GripElement[] {
    const chosen = positions.flatMap((position) => elements[position] ?? []);
    return [...chosen.filter(takesIt), ...chosen.filter((element) => !takesIt(element))];
  }
}
