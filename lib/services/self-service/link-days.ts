/*
 * How long links of an order open it.
 * Invariant: whoever ordered can follow the hire to its end, and its charges for a while after.
 * Not here: withdrawing links (take-over.ts).
 * Read next: start-order.ts, self-facts.ts.
 */
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { selfServiceFacts } from './self-facts.ts';

export function linksOpenUntil(context: Context, endsBefore: IsoDate): string {
  return `${addDays(endsBefore, selfServiceFacts(context).link_days_after_hire)}T00:00:00.000Z`;
}

/** When a link that is given out now stops opening its order. */
export function linkEnds(context: Context): string {
  return new Date(context.now().getTime() + selfServiceFacts(context).link_days * 86_400_000).toISOString();
}
