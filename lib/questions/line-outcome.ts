/*
 * What a line comes to as it is told: torque, what would go along at least cost, its hire, and whether the Desk must look.
 * Invariant: pure; the same line, site and catalogue give the same outcome. Stock is not asked: what is free today changes no question.
 * Not here: whole lists with their crews and days (lib/planning).
 * Read next: hand-over.ts, next-question.ts.
 */
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { Site } from '#lib/duty/site.ts';
import type { AssemblyParts } from '#lib/equipment/assembly.ts';
import type { Alternative, ChoiceFamily } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { findChoices } from '#lib/kits/find-choices.ts';
import { partsFromIds } from '#lib/kits/parts-of.ts';
import { bestRate } from '#lib/pricing/best-rate.ts';
import { type HandOver, handOversOfDuty, handOversOfKit, type SelfServiceBounds } from './hand-over.ts';
import type { ReadTold } from './question.ts';

export interface KitPiece {
  readonly number: string;
  readonly count: number;
}

export interface LineOutcome {
  readonly duty: Duty;
  readonly handOver: readonly HandOver[];
  /** In the order of the chain; empty where nothing fits. */
  readonly kit: readonly KitPiece[];
  /** Hire of the kit over the days, without what a crew carries besides. */
  readonly hire_minor: number;
}

interface Asked {
  readonly site: Site;
  readonly models: readonly Model[];
  readonly bounds: SelfServiceBounds;
}

const NO_WISHES = { lockedParts: [], excludedParts: [], pins: [] } as const;

export function readTold(cells: Cells, site: Site): ReadTold {
  const { line } = readLine({ row: 1, cells });
  return { cells, line, site, duty: assessDuty({ line, site }) };
}

/** The outcome in full, as it is shown. */
export function lineOutcome(told: ReadTold, asked: Asked): LineOutcome {
  const reasons = handOversOfDuty({ ...told, bounds: asked.bounds });
  return told.duty.seized ? withoutKit(told, reasons) : withKit(told, { ...asked, reasons });
}

/** The outcome as far as it decides a question: what goes to the Desk by its duty alone needs no kit to be looked for. */
export function triedOutcome(told: ReadTold, asked: Asked): LineOutcome {
  const reasons = handOversOfDuty({ ...told, bounds: asked.bounds });
  return reasons.length > 0 ? withoutKit(told, reasons) : withKit(told, { ...asked, reasons });
}

function withoutKit({ duty }: ReadTold, reasons: readonly HandOver[]): LineOutcome {
  return { duty, handOver: reasons, kit: [], hire_minor: 0 };
}

function withKit(
  { line, duty }: ReadTold,
  { site, models, reasons }: Omit<Asked, 'bounds'> & { readonly reasons: readonly HandOver[] },
) {
  const choices = findChoices({ lines: [{ line, duty }], site, models, constraints: NO_WISHES, told: 'not at all' });
  const hireOf = hirePrices(models, site.days);
  const parts = cheapest(
    choices.classes.flatMap(({ families }) => families),
    hireOf,
  );
  const kit = parts === null ? [] : piecesOf(parts);
  const byNumber = new Map(models.map((model) => [model.number, model]));
  const found = kit.flatMap(({ number }) => byNumber.get(number) ?? []);
  return {
    duty,
    handOver: [...reasons, ...handOversOfKit(parts === null ? null : found)],
    kit,
    hire_minor: kit.reduce((sum, { number, count }) => sum + hireOf(number) * count, 0),
  };
}

/** Costs of a core and of slots add up, so the cheapest of each is the cheapest of all; ties go to the first id. */
function cheapest(families: readonly ChoiceFamily[], hireOf: (number: string) => number): AssemblyParts | null {
  const costOf = ({ needs }: Alternative): number =>
    needs.reduce((sum, { item, count }) => sum + hireOf(item) * count, 0);
  const least = (from: readonly Alternative[]): Alternative | undefined =>
    from.toSorted((a, b) => costOf(a) - costOf(b) || (a.id < b.id ? -1 : 1))[0];
  const picked = families.flatMap(({ cores, slots }) => {
    const all = [cores, ...slots].flatMap((role) => least(role) ?? []);
    if (all.length !== slots.length + 1) return [];
    const ids = all.map(({ id }) => id);
    return [{ ids, cost: all.reduce((sum, one) => sum + costOf(one), 0) }];
  });
  const best = picked.toSorted((a, b) => a.cost - b.cost || (a.ids.join(' ') < b.ids.join(' ') ? -1 : 1))[0];
  if (best === undefined) return null;
  const [core = '', ...slots] = best.ids;
  return partsFromIds({ core, slots });
}

/** Hire of one piece over the days, worked out once for each model. */
function hirePrices(models: readonly Model[], days: number): (number: string) => number {
  const byNumber = new Map(models.map((model) => [model.number, model]));
  const known = new Map<string, number>();
  return (number) => {
    const model = byNumber.get(number);
    if (model === undefined) return 0;
    const price = known.get(number) ?? bestRate({ rates: model.rates, days }).total_minor;
    known.set(number, price);
    return price;
  };
}

/**
 * Equal where kit, price and the need to hand over are equal: then a question has changed nothing.
 * What goes to the Desk has no price yet, so that a different kit is no different answer.
 */
export function outcomeKey({ handOver, kit, hire_minor }: LineOutcome): string {
  if (handOver.length > 0)
    return handOver
      .map(({ code }) => code)
      .toSorted()
      .join(' ');
  return `${hire_minor} ${kit.map(({ number, count }) => `${count}×${number}`).join(' ')}`;
}

function piecesOf(parts: AssemblyParts): readonly KitPiece[] {
  const counts = new Map<string, number>();
  const add = (number: string, count: number): void => {
    counts.set(number, (counts.get(number) ?? 0) + count);
  };
  add(parts.drive, 1);
  add(parts.head, 1);
  for (const extension of new Set([...parts.extensions, ...(parts.adapterExtensions ?? []).flat()])) add(extension, 1);
  for (const adapter of new Set(parts.adapters)) add(adapter, 1);
  add(parts.restraint, 1);
  for (const option of parts.options) add(option, 1);
  for (const { number, count } of parts.accessories) add(number, count);
  return [...counts].map(([number, count]) => ({ number, count }));
}
