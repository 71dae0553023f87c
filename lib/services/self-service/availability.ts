/*
 * Whether everything an order needs is free on its dates, and if not, from when it would be.
 * Invariant: yes, or a day, or no; never how many pieces there are, are free or are out.
 * Not here: holding them (accept-order.ts).
 * Read next: ../../stock/shortage.ts.
 */
import { type IsoDate, rangeOfDays } from '#lib/kernel/date-range.ts';
import type { PlanOutcome } from '#lib/planning/worked-out.ts';
import type { Context } from '#lib/services/context.ts';
import { stockQuestion } from '#lib/services/house/house-facts.ts';
import type { OptionPrice } from '#lib/services/quotes/option-price.ts';
import { findShortages } from '#lib/stock/shortage.ts';

export type Availability =
  | { readonly kind: 'free' }
  | { readonly kind: 'later'; readonly from: IsoDate }
  | { readonly kind: 'more days' }
  | { readonly kind: 'not free' };

interface Asked {
  readonly option: OptionPrice;
  readonly outcome: PlanOutcome;
}

export function availabilityOf(desk: Context, { option, outcome }: Asked): Availability {
  const { planned, enquiry, input } = option;
  const lacking = outcome.kits.flatMap((kit) => kit.lacking ?? []);
  const isServed = outcome.lines.every(({ asked, served }) => asked === served);
  if (isServed && lacking.length === 0) return { kind: 'free' };
  const short = planned?.worked.shortage?.short ?? [];
  if (short.length === 0 && lacking.length === 0) return { kind: 'more days' };
  const counts = new Map<string, number>();
  for (const { item, count } of outcome.kits.flatMap((kit) => [...kit.items, ...(kit.lacking ?? [])]))
    counts.set(item, (counts.get(item) ?? 0) + count);
  for (const { item, wanted } of short) counts.set(item, Math.max(counts.get(item) ?? 0, wanted));
  const serialised = new Set(
    input.models.filter(({ counted, madeToOrder }) => !counted && !madeToOrder).map(({ number }) => number),
  );
  const needs = [...counts].filter(([model]) => serialised.has(model)).map(([model, count]) => ({ model, count }));
  const window = rangeOfDays(enquiry.site.startsOn, enquiry.site.days);
  const starts = findShortages({ ...stockQuestion(desk, { window, enquiryId: enquiry.row.id }), needs }).map(
    ({ freeFrom }) => freeFrom,
  );
  const days = starts.filter((day) => day !== null);
  if (days.length === 0 || days.length < starts.length) return { kind: 'not free' };
  return { kind: 'later', from: days.toSorted().at(-1) ?? enquiry.site.startsOn };
}
