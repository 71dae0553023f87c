/*
 * What each crew carries for its work: the pieces of its assemblies, and what it takes to run them, as far as that is free.
 * Invariant: the pieces of assemblies come first; all kits together hold no more than is free, and what a crew goes without is told.
 * Not here: which accessories a crew needs (../kits/carried/accessories.ts).
 * Read next: work-out.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { CrewKit, ItemNeed } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { crewAccessories } from '#lib/kits/carried/accessories.ts';
import type { PlannedKit, PlannedWork } from './worked-out.ts';

export interface CarryInput {
  readonly kits: readonly CrewKit[];
  readonly work: readonly PlannedWork[];
  readonly assemblies: Readonly<Record<string, Assembly>>;
  readonly site: Site;
  readonly models: readonly Model[];
  readonly free: Readonly<Record<string, number>>;
}

export function carryKits(input: CarryInput): readonly PlannedKit[] {
  const models = new Map(input.models.map((model) => [model.number, model]));
  const left = new Map(input.models.map((model) => [model.number, freeOf(model, input)]));
  for (const { item, count } of input.kits.flatMap(({ items }) => items)) left.set(item, (left.get(item) ?? 0) - count);
  return input.kits.map((kit) => {
    const carried = new Map(kit.items.map(({ item, count }) => [item, count]));
    const lacking: ItemNeed[] = [];
    const free = (number: string): number => Math.max(0, left.get(number) ?? 0);
    for (const { item, count } of accessoriesOf(kit, input, free)) {
      const already = carried.get(item) ?? 0;
      const more = Math.max(0, count - already);
      const taken = Math.min(more, free(item));
      left.set(item, (left.get(item) ?? 0) - taken);
      if (already + taken > 0) carried.set(item, already + taken);
      if (taken < more) lacking.push({ item, count: more - taken });
    }
    const items = inOrder([...carried].map(([item, count]) => ({ item, count })));
    return {
      crew: kit.crew,
      items,
      time_s: kit.time,
      mass_kg: items.reduce((sum, need) => sum + (models.get(need.item)?.mass ?? 0) * need.count, 0),
      pieces: items.reduce((sum, need) => sum + (models.get(need.item)?.counted ? 0 : need.count), 0),
      ...(lacking.length === 0 ? {} : { lacking: inOrder(lacking) }),
    };
  });
}

function freeOf(model: Model, { site, free }: CarryInput): number {
  return model.madeToOrder ? site.crews : (free[model.number] ?? 0);
}

function accessoriesOf(
  kit: CrewKit,
  { work, assemblies, site, models }: CarryInput,
  free: (number: string) => number,
): readonly ItemNeed[] {
  const used = work.flatMap(({ crew, assembly: key, qty }) => {
    const assembly = crew === kit.crew ? assemblies[key] : undefined;
    return assembly ? [{ assembly, qty }] : [];
  });
  return crewAccessories({ work: used, time: kit.time, site, models, free });
}

function inOrder(needs: readonly ItemNeed[]): readonly ItemNeed[] {
  return needs.toSorted((a, b) => (a.item < b.item ? -1 : 1));
}
