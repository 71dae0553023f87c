/*
 * The assemblies of one line that no other beats in cost, mass, time, pieces and chance at once, in a fixed order.
 * Invariant: nothing that is left out beats a listed one; what the limit keeps out is counted by `more`.
 * Not here: sharing assemblies out over crews (fleet).
 * Read next: build-assembly.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Alternative } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { buildAssembly } from './build-assembly.ts';
import { bestOfFamily, notBeaten, type Scored } from './cores/best-combinations.ts';
import { findChoices, type LineDuty, type Unserved } from './find-choices.ts';
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
  /** Why there are none; null where there are. */
  readonly unserved: Unserved | null;
  readonly effort: Readonly<Record<string, number>>;
}

export function listAssemblies({ lineDuty, site, models, constraints, limit }: ListInput): ListedAssemblies {
  const choices = findChoices({ lines: [lineDuty], site, models, constraints, told: 'in full' });
  const scoreOf = scorer(models);
  let joined = 0;
  const families = choices.classes.flatMap((one) => one.families);
  const best = notBeaten(
    families.flatMap(({ cores, slots }) => {
      const found = bestOfFamily([cores, ...slots].map((role) => role.map(scoreOf)));
      joined += found.length;
      return found;
    }),
  );
  const assemblies = best
    .slice(0, limit)
    .map(({ ids: [core = '', ...slots] }) =>
      buildAssembly({ lineDuty, site, models, parts: partsFromIds({ core, slots }) }),
    );
  return {
    assemblies,
    more: Math.max(0, best.length - limit),
    unserved: choices.unserved[0] ?? null,
    effort: { ...choices.effort, best_of_families: joined },
  };
}

/** Grams, so that sums of masses are exact and equal masses are equal. */
const GRAMS = 1000;

/** Cost, mass, time and pieces of an alternative; worked out once for each. */
function scorer(models: readonly Model[]): (alternative: Alternative) => Scored {
  const byNumber = new Map(models.map((model) => [model.number, model]));
  const known = new Map<Alternative, Scored>();
  return (alternative) => {
    const before = known.get(alternative);
    if (before !== undefined) return before;
    let cost = 0;
    let mass = 0;
    let pieces = 0;
    for (const { item, count } of alternative.needs) {
      const model = byNumber.get(item);
      if (model === undefined) continue;
      cost += model.rates.day_minor * count;
      mass += Math.round(model.mass * GRAMS) * count;
      pieces += model.counted ? 0 : count;
    }
    const measures = [cost, mass, alternative.timePerValve, pieces];
    const scored = { ids: [alternative.id], measures, chance: alternative.chance };
    known.set(alternative, scored);
    return scored;
  };
}
