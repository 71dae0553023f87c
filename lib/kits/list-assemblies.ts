/*
 * The assemblies of one line that no other beats in cost, mass, time, pieces and chance at once, in a fixed order.
 * Invariant: nothing that is left out beats a listed one; reaching the limit is told by `more`.
 * Not here: sharing assemblies out over crews (fleet).
 * Read next: build-assembly.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Alternative, ChoiceFamily, ItemNeed } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { buildAssembly } from './build-assembly.ts';
import { findChoices, type LineDuty } from './find-choices.ts';
import { partsFromIds } from './parts-of.ts';
import type { KitConstraints } from './wishes.ts';

export interface ListInput {
  readonly lineDuty: LineDuty;
  readonly site: Site;
  readonly models: readonly Model[];
  readonly constraints: KitConstraints;
  readonly limit: number;
}

export interface ListedAssemblies {
  readonly assemblies: readonly Assembly[];
  /** Non-dominated assemblies beyond the limit. */
  readonly more: number;
  readonly effort: Readonly<Record<string, number>>;
}

/** Whole assemblies looked at for one line; more are told as `more`. */
const MOST_LOOKED_AT = 20_000;

interface Candidate {
  readonly ids: { readonly core: string; readonly slots: readonly string[] };
  readonly key: string;
  /** The smaller the better, all of them. */
  readonly score: readonly number[];
}

export function listAssemblies({ lineDuty, site, models, constraints, limit }: ListInput): ListedAssemblies {
  const choices = findChoices({ lines: [lineDuty], site, models, constraints });
  const byNumber = new Map(models.map((model) => [model.number, model]));
  const looked: Candidate[] = [];
  let passedOver = 0;
  for (const family of choices.classes.flatMap((one) => one.families)) {
    for (const candidate of candidatesOf(family, byNumber)) {
      if (looked.length < MOST_LOOKED_AT) looked.push(candidate);
      else passedOver += 1;
    }
  }
  const best = notBeaten(looked);
  const assemblies = best
    .slice(0, limit)
    .map(({ ids }) => buildAssembly({ lineDuty, site, models, parts: partsFromIds(ids) }));
  return {
    assemblies,
    more: Math.max(0, best.length - limit) + passedOver,
    effort: { ...choices.effort, assemblies_looked_at: looked.length },
  };
}

function* candidatesOf(family: ChoiceFamily, models: ReadonlyMap<string, Model>): Generator<Candidate> {
  const slots = family.slots.reduce<readonly (readonly Alternative[])[]>(
    (chosen, slot) => chosen.flatMap((before) => slot.map((alternative) => [...before, alternative])),
    [[]],
  );
  for (const core of family.cores) for (const chosen of slots) yield candidate({ core, chosen, models });
}

function candidate(at: {
  readonly core: Alternative;
  readonly chosen: readonly Alternative[];
  readonly models: ReadonlyMap<string, Model>;
}): Candidate {
  const { core, chosen, models } = at;
  const parts = [core, ...chosen];
  const needs = parts.flatMap((alternative) => alternative.needs);
  const sum = (of: (model: Model) => number): number =>
    needs.reduce((total: number, need: ItemNeed) => {
      const model = models.get(need.item);
      return total + (model === undefined ? 0 : of(model) * need.count);
    }, 0);
  return {
    ids: { core: core.id, slots: chosen.map(({ id }) => id) },
    key: parts.map(({ id }) => id).join(' '),
    score: [
      sum((model) => model.rates.day_minor),
      sum((model) => model.mass),
      parts.reduce((time, part) => time + part.timePerValve, 0),
      sum((model) => (model.counted ? 0 : 1)),
      -parts.reduce((chance, part) => chance * part.chance, 1),
    ],
  };
}

/** Sorted by cost, then by the other measures and the name; each is held against those before it, which are the only ones that may beat it. */
function notBeaten(candidates: readonly Candidate[]): readonly Candidate[] {
  const sorted = candidates.toSorted((a, b) => compare(a, b));
  const kept: Candidate[] = [];
  for (const one of sorted) if (!kept.some((other) => beats(other.score, one.score))) kept.push(one);
  return kept;
}

function compare(a: Candidate, b: Candidate): number {
  for (const [index, value] of a.score.entries()) {
    const difference = value - (b.score[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return a.key < b.key ? -1 : 1;
}

/** At least as good in everything; equals count as beaten, so that one of them is listed. */
function beats(a: readonly number[], b: readonly number[]): boolean {
  return a.every((value, index) => value <= (b[index] ?? 0));
}
