/*
 * Cheapest mix of days, weeks and four-weeks that covers a number of days of hire.
 * Invariant: no other mix that covers the days (and the minimum) costs less; a longer hire never costs less than a shorter one.
 * Not here: which days are charged (chargeable-days.ts).
 * Read next: price-plan.ts.
 */
import type { RateCard } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { type Minor, toMinor } from '#lib/money/money.ts';
import { tellParts } from './tell.ts';

export interface RateMix {
  readonly total_minor: Minor;
  readonly fourWeeks: number;
  readonly weeks: number;
  readonly days: number;
  /** Days asked for, or the minimum where that is more. */
  readonly charged_days: number;
  /** The mix in words, e.g. `1 week and 2 days`. */
  readonly mix: string;
}

export interface RateQuestion {
  readonly rates: RateCard;
  readonly days: number;
  /** Charged days in a week: 7, or 5 where week-ends are free. */
  readonly daysPerWeek?: 5 | 7;
}

export function bestRate({ rates, days, daysPerWeek = 7 }: RateQuestion): RateMix {
  invariant(Number.isInteger(days) && days >= 1, `A hire is a whole number of days, at least one, not ${days}.`);
  const charged = Math.max(days, rates.minimum_days);
  let best: Candidate | undefined;
  for (let fourWeeks = 0; fourWeeks <= Math.ceil(charged / (4 * daysPerWeek)); fourWeeks += 1) {
    const afterFourWeeks = Math.max(0, charged - fourWeeks * 4 * daysPerWeek);
    for (let weeks = 0; weeks <= Math.ceil(afterFourWeeks / daysPerWeek); weeks += 1) {
      const single = Math.max(0, afterFourWeeks - weeks * daysPerWeek);
      const cost = fourWeeks * rates.four_weeks_minor + weeks * rates.week_minor + single * rates.day_minor;
      const candidate = { fourWeeks, weeks, days: single, cost };
      if (best === undefined || isBetter({ candidate, best })) best = candidate;
    }
  }
  invariant(best, 'Every hire has at least one mix of rates.');
  return {
    total_minor: toMinor(best.cost),
    fourWeeks: best.fourWeeks,
    weeks: best.weeks,
    days: best.days,
    charged_days: charged,
    mix: tellMix(best),
  };
}

interface Candidate {
  readonly fourWeeks: number;
  readonly weeks: number;
  readonly days: number;
  readonly cost: number;
}

/** Cheaper first; at equal cost fewer periods, so that a customer reads `1 week` and not `7 days`. */
function isBetter({ candidate, best }: { readonly candidate: Candidate; readonly best: Candidate }): boolean {
  if (candidate.cost !== best.cost) return candidate.cost < best.cost;
  return periods(candidate) < periods(best);
}

function periods(mix: Candidate): number {
  return mix.fourWeeks + mix.weeks + mix.days;
}

function tellMix(mix: Candidate): string {
  return tellParts([
    mix.fourWeeks === 0 ? '' : mix.fourWeeks === 1 ? '4 weeks' : `${mix.fourWeeks} times 4 weeks`,
    mix.weeks === 0 ? '' : mix.weeks === 1 ? '1 week' : `${mix.weeks} weeks`,
    mix.days === 0 ? '' : mix.days === 1 ? '1 day' : `${mix.days} days`,
  ]);
}
