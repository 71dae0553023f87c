/*
 * The cheapest hire of one piece, by trying every mix of four-weeks, weeks and days that covers the time.
 * Invariant: every mix is tried up to the longest that could be of use; nothing is taken from the pricing.
 * Not here: which days are charged (price-facts.ts).
 * Read next: expected-lines.ts.
 */
import type { RateCard } from '#lib/equipment/model.ts';

export interface Hire {
  readonly rates: RateCard;
  readonly days: number;
  readonly daysPerWeek: number;
}

export function cheapestHire({ rates, days, daysPerWeek }: Hire): number {
  const asked = Math.max(days, rates.minimum_days);
  const most = Math.ceil(asked / daysPerWeek) + 4;
  let best = Number.POSITIVE_INFINITY;
  for (let long = 0; long * 4 <= most; long += 1) {
    for (let weeks = 0; weeks <= most; weeks += 1) {
      const left = Math.max(0, asked - (long * 4 + weeks) * daysPerWeek);
      best = Math.min(best, long * rates.four_weeks_minor + weeks * rates.week_minor + left * rates.day_minor);
    }
  }
  return best;
}

/** Beyond ten years nobody compares; the house's choice. */
const LONGEST_DAYS = 3650;

/** First day by which hire has cost as much as a new one; null where it never does. */
export function daysToPrice({
  rates,
  daysPerWeek,
  price,
}: Omit<Hire, 'days'> & { readonly price: number }): number | null {
  const costs = cheapestUpTo({ rates, daysPerWeek });
  const day = costs.findIndex((cost, index) => index >= 1 && cost >= price);
  return day === -1 ? null : day;
}

/** Cheapest cost of 0, 1, 2 … days, each from what is left after its last period; the minimum counts from the first day. */
function cheapestUpTo({ rates, daysPerWeek }: Omit<Hire, 'days'>): readonly number[] {
  const costs = [0];
  const periods = [
    { days: 1, cost: rates.day_minor },
    { days: daysPerWeek, cost: rates.week_minor },
    { days: 4 * daysPerWeek, cost: rates.four_weeks_minor },
  ];
  for (let day = 1; day <= LONGEST_DAYS; day += 1) {
    costs.push(Math.min(...periods.map((period) => period.cost + (costs[Math.max(0, day - period.days)] ?? 0))));
  }
  const minimum = costs[rates.minimum_days] ?? 0;
  return costs.map((cost, day) => (day < rates.minimum_days ? minimum : cost));
}
