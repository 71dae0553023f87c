/*
 * What a plan takes from the house's other depots, by when it must be sent, and whether that day is still to come.
 * Invariant: the depot that despatches gives what it has first, as when a quote is accepted.
 * Not here: sending it (../stock/send-transfer.ts).
 * Read next: ../../stock/by-depot.ts.
 */
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import type { PlanOutcome, WorkOutInput } from '#lib/planning/worked-out.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, stockQuestion } from '#lib/services/house/house-facts.ts';
import { type Bring, bringFromDepots, freeAt } from '#lib/stock/by-depot.ts';

export interface Brought extends Bring {
  readonly depotName: string;
  /** False where the day to send it has passed. */
  readonly isInTime: boolean;
}

export interface DepotsView {
  readonly despatching: string;
  readonly brought: readonly Brought[];
}

interface DepotsAsked {
  readonly enquiryId: number;
  readonly site: WorkOutInput['site'];
  readonly kits: PlanOutcome['kits'];
}

export function depotsOf(context: Context, { enquiryId, site, kits }: DepotsAsked): DepotsView {
  const { depots } = houseFacts(context);
  const needs = new Map<string, number>();
  for (const { item, count } of kits.flatMap(({ items }) => items)) needs.set(item, (needs.get(item) ?? 0) + count);
  const question = stockQuestion(context, { window: rangeOfDays(site.startsOn, site.days), enquiryId });
  const brought = bringFromDepots({ question, needs, depots: depots.map(({ code }) => code) });
  const names = new Map(depots.map(({ code, name }) => [code, name]));
  return {
    despatching: depots[0]?.name ?? '',
    brought: brought.map((one) => ({
      ...one,
      depotName: names.get(one.depot) ?? one.depot,
      isInTime: one.sendOn >= today(context),
    })),
  };
}

/** What is free at the despatching depot alone. */
export function freeAtHome(
  context: Context,
  { enquiryId, site }: Pick<DepotsAsked, 'enquiryId' | 'site'>,
): WorkOutInput['free'] {
  const question = stockQuestion(context, { window: rangeOfDays(site.startsOn, site.days), enquiryId });
  const depot = houseFacts(context).depots[0]?.code ?? '';
  const everywhere = Object.fromEntries([...new Set(question.units.map(({ model }) => model))].map((one) => [one, 0]));
  return { ...everywhere, ...Object.fromEntries(freeAt({ question, depot, isDespatching: true })) };
}
