/*
 * What a core rule of a conflict refuses: drives with heads, each by the core of theirs that comes nearest to passing.
 * Invariant: the nearest of all that is told alone is the one that the whole list would name.
 * Not here: rules on grips and restraints (tell-beside-cores.ts).
 * Read next: near-cores.ts, tell-conflict.ts.
 */
import type { RuleOf } from '#lib/rules/rule.ts';
import { findingOf } from '#lib/rules/rule.ts';
import type { AlikeCores, HeadAt } from '../cores/alike-cores.ts';
import { bitOf, firstHead, looksAtCounter, looksAtHead } from '../cores/core-table.ts';
import type { ClassQuestion } from '../search-class.ts';
import { type NearCores, nearCores } from './near-cores.ts';
import type { NearestRefused, RefusedPart } from './refused-part.ts';

interface Asked {
  readonly rule: RuleOf<'core'>;
  readonly conflict: readonly string[];
}

/** One core that is refused; `broken` is its count and how far it falls short. */
interface Refused {
  readonly one: AlikeCores;
  readonly at: HeadAt;
  readonly broken: number;
}

export function nearestCore(question: ClassQuestion, { rule, conflict }: Asked): NearestRefused {
  const near = nearCores(question, conflict);
  const seen = new Uint8Array(near.table.counts.mating);
  const refused = near.byBits === null ? eachRefused(near, { rule, seen }) : eachRefusedByBits(near, { rule, seen });
  const nearest = refused.reduce<Refused | null>(
    (best, one) => (best === null || isNearer(one, best) ? one : best),
    null,
  );
  const parts = seen.reduce((sum, one) => sum + one, 0);
  return { nearest: nearest === null ? null : toldPart(question, { near, rule, refused: nearest }), parts };
}

/** A core rule, and the drives with heads that it refuses, which are marked. */
interface Marking {
  readonly rule: RuleOf<'core'>;
  readonly seen: Uint8Array;
}

/** Every core that may be the nearest. */
function eachRefused(near: NearCores, { rule, seen }: Marking): readonly Refused[] {
  const refuses = refusalOf(near, rule);
  const isHeadAsked = near.looksAtHead || looksAtHead(rule);
  return near.alike.flatMap((one) =>
    (isHeadAsked ? one.heads : one.heads.slice(0, 1)).flatMap((at) => {
      if (!refuses(one, at)) return [];
      for (const mating of isHeadAsked ? [at.mating] : one.matings) seen[mating] = 1;
      return [{ one, at, broken: near.count(one, at) + near.table.shortfall(one) }];
    }),
  );
}

/** The same where bits tell all: only of those that break the fewest is it worked out how far they fall short. */
function eachRefusedByBits({ table, byBits, broken }: NearCores, { rule, seen }: Marking): readonly Refused[] {
  const refused = [...(byBits ?? [])].filter(([bits]) => (bits & bitOf(rule)) !== 0);
  for (const [, alike] of refused) for (const { matings } of alike) for (const mating of matings) seen[mating] = 1;
  const fewest = Math.min(...refused.map(([bits]) => broken(bits)));
  const found: Refused[] = [];
  for (const [bits, alike] of refused) {
    if (broken(bits) > fewest) continue;
    for (const one of alike) found.push({ one, at: firstHead(one), broken: fewest + table.shortfall(one) });
  }
  return found;
}

/** All that a core rule refuses, the nearest core of each drive and head. */
export function refusedCores(question: ClassQuestion, { rule, conflict }: Asked): readonly RefusedPart[] {
  const near = nearCores(question, conflict);
  const refuses = refusalOf(near, rule);
  const nearest = new Map<number, Refused>();
  for (const one of near.alike) {
    for (const at of one.heads) {
      if (!refuses(one, at)) continue;
      const refused = { one, at, broken: near.count(one, at) + near.table.shortfall(one) };
      const known = nearest.get(at.mating);
      if (known === undefined || isNearer(refused, known)) nearest.set(at.mating, refused);
    }
  }
  return [...nearest.values()]
    .toSorted((a, b) => a.at.place - b.at.place)
    .map((refused) => toldPart(question, { near, rule, refused }));
}

function refusalOf({ table }: NearCores, rule: RuleOf<'core'>): (one: AlikeCores, at: HeadAt) => boolean {
  return looksAtCounter(rule)
    ? (one, at) => table.refusesCounter(rule, table.core(one, at), null)
    : (one, at) => table.refuses(rule, one, at);
}

const isNearer = (one: Refused, other: Refused): boolean =>
  one.broken < other.broken || (one.broken === other.broken && one.at.place < other.at.place);

function toldPart(
  { facts }: ClassQuestion,
  { near, rule, refused }: { readonly near: NearCores; readonly rule: RuleOf<'core'>; readonly refused: Refused },
): RefusedPart {
  const { one, at, broken } = refused;
  const { drive, head } = at.frame;
  const finding = () => findingOf(rule, { ...facts, core: { ...near.table.core(one, at), counter: null } });
  return { finding, part: `${drive.number} ${head.number}`, broken };
}
