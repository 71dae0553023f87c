/*
 * Which days of a hire window are charged: week-ends, holidays and transit by the terms.
 * Invariant: at least one day is charged; the sentence names every kind of day that is left out.
 * Not here: rates (best-rate.ts) and when the charge ends (off-hire, later in a hire's life).
 * Read next: best-rate.ts.
 */
import { addDays, type DateRange, daysBetween, type IsoDate } from '#lib/kernel/date-range.ts';
import { tellCount, tellParts } from './tell.ts';

export interface ChargingRule {
  readonly weekends: 'charged' | 'free';
  readonly holidays: 'charged' | 'free';
  readonly holidayDates: readonly IsoDate[];
  /** Days on the way before and after the hire. */
  readonly transit: 'charged' | 'free';
}

export interface ChargeableDays {
  readonly days: number;
  readonly sentence: string;
}

export interface ChargeableQuestion {
  readonly window: DateRange;
  readonly rule: ChargingRule;
  readonly transitDays: number;
}

export function chargeableDays({ window, rule, transitDays }: ChargeableQuestion): ChargeableDays {
  const hire = daysBetween(window);
  let weekend = 0;
  let holiday = 0;
  for (let day = 0; day < hire; day += 1) {
    const date = addDays(window.starts_on, day);
    if (rule.weekends === 'free' && isWeekend(date)) weekend += 1;
    else if (rule.holidays === 'free' && rule.holidayDates.includes(date)) holiday += 1;
  }
  const transit = rule.transit === 'charged' ? transitDays : 0;
  const days = Math.max(1, hire - weekend - holiday + transit);
  return { days, sentence: tellDays({ days, hire, weekend, holiday, transit }) };
}

function isWeekend(date: IsoDate): boolean {
  const day = new Date(`${date}T00:00:00Z`).getUTCDay();
  return day === 0 || day === 6;
}

interface DayCounts {
  readonly days: number;
  readonly hire: number;
  readonly weekend: number;
  readonly holiday: number;
  readonly transit: number;
}

function tellDays(counts: DayCounts): string {
  const left = tellParts([
    counts.weekend === 0 ? '' : tellCount({ count: counts.weekend, one: 'week-end day', many: 'week-end days' }),
    counts.holiday === 0 ? '' : tellCount({ count: counts.holiday, one: 'holiday', many: 'holidays' }),
  ]);
  const head = `${tellCount({ count: counts.days, one: 'day is', many: 'days are' })} charged for ${tellCount({ count: counts.hire, one: 'day', many: 'days' })} of hire`;
  const out = left === '' ? '' : `, without ${left}`;
  const added =
    counts.transit === 0
      ? ''
      : `, with ${tellCount({ count: counts.transit, one: 'transit day', many: 'transit days' })}`;
  return `${head}${out}${added}.`;
}
