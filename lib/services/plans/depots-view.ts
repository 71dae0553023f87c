/*
 * What a plan takes from the house's other depots, by when it must be sent, and the later start for which that day is still to come.
 * Invariant: the depot that despatches gives what it has first, as when a quote is accepted.
 * Not here: sending it (../stock/send-transfer.ts).
 * Read next: ../../stock/by-depot.ts, ../../stock/later-start.ts.
 */
import { daysBetween, type IsoDate, rangeOfDays } from '#lib/kernel/date-range.ts';
import type { PlanOutcome, WorkOutInput } from '#lib/planning/worked-out.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, houseModels, stockQuestion } from '#lib/services/house/house-facts.ts';
import { type Bring, bringFromDepots, freeAt } from '#lib/stock/by-depot.ts';
import { laterStart } from '#lib/stock/later-start.ts';

export interface Brought extends Bring {
  readonly depotName: string;
  /** False where the day to send it has passed. */
  readonly isInTime: boolean;
}

/** The first start on which all of it is free and can still be sent. */
export interface LaterStartView {
  readonly startsOn: IsoDate;
  readonly daysLater: number;
  /** What the other depots send then. */
  readonly brought: readonly Brought[];
  /** Whether the house asks the same rates on that day. */
  readonly rates: 'the same' | 'others';
}

export interface DepotsView {
  readonly despatching: string;
  readonly brought: readonly Brought[];
  /** Where a day of sending has passed; null too where no start within a year would do. */
  readonly later: LaterStartView | null;
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
  const codes = depots.map(({ code }) => code);
  const names = new Map(depots.map(({ code, name }) => [code, name]));
  const toldOf = (bring: readonly Bring[]): readonly Brought[] =>
    bring.map((one) => ({
      ...one,
      depotName: names.get(one.depot) ?? one.depot,
      isInTime: one.sendOn >= today(context),
    }));
  const brought = toldOf(bringFromDepots({ question, needs, depots: codes }));
  const later = brought.every(({ isInTime }) => isInTime)
    ? null
    : laterStart({ question, needs, depots: codes, today: today(context) });
  return {
    despatching: depots[0]?.name ?? '',
    brought,
    later:
      later === null
        ? null
        : {
            startsOn: later.startsOn,
            daysLater: daysBetween({ starts_on: site.startsOn, ends_before: later.startsOn }),
            brought: toldOf(later.bring),
            rates: sameRates(context, { asked: site.startsOn, later: later.startsOn }) ? 'the same' : 'others',
          },
  };
}

function sameRates(context: Context, on: { readonly asked: IsoDate; readonly later: IsoDate }): boolean {
  return JSON.stringify(houseModels(context, on.asked)) === JSON.stringify(houseModels(context, on.later));
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
