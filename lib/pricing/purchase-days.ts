/*
 * After how many charged days of hire buying would have been cheaper.
 * Invariant: at the answer the hire costs at least the price of a new one, and one day less costs less.
 * Not here: upkeep, storage and inspection, which an owner pays and a hirer does not.
 * Read next: best-rate.ts.
 */
import type { RateCard } from '#lib/equipment/model.ts';
import type { Minor } from '#lib/money/money.ts';
import { bestRate } from './best-rate.ts';

/** Beyond ten years nobody compares. */
export const LONGEST_COMPARED_DAYS = 3650;

export interface PurchaseQuestion {
  readonly rates: RateCard;
  /** Charged days in a week, as in the hire itself. */
  readonly daysPerWeek: 5 | 7;
  readonly replacement_minor: Minor;
}

/** Null where hire stays cheaper for as long as anybody compares. Costs never fall with the days, so halving finds the day. */
export function purchaseDays({ rates, daysPerWeek, replacement_minor }: PurchaseQuestion): number | null {
  const reaches = (days: number): boolean => bestRate({ rates, days, daysPerWeek }).total_minor >= replacement_minor;
  if (!reaches(LONGEST_COMPARED_DAYS)) return null;
  let low = 1;
  let high = LONGEST_COMPARED_DAYS;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (reaches(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
