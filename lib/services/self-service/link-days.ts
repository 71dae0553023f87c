/*
 * How long links of an order open it.
 * Invariant: whoever ordered can follow the hire to its end, and its charges for a while after.
 * Not here: withdrawing links (take-over.ts).
 * Read next: start-order.ts.
 */
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';

/** A draft that nobody touched for a month is out of date anyway: dates and rates have moved. House practice, no source. */
const LINK_DAYS = 30;
/** Charges are settled and papers asked for again within two months of the return. House practice, no source. */
const DAYS_AFTER_HIRE = 60;

export function linksOpenUntil(endsBefore: IsoDate): string {
  return `${addDays(endsBefore, DAYS_AFTER_HIRE)}T00:00:00.000Z`;
}

/** When a link that is given out now stops opening its order. */
export function linkEnds(context: Context): string {
  return new Date(context.now().getTime() + LINK_DAYS * 86_400_000).toISOString();
}
