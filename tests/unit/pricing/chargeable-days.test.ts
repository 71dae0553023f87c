import { describe, expect, it } from 'vitest';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { type ChargingRule, chargeableDays } from '#lib/pricing/chargeable-days.ts';

const FREE: ChargingRule = {
  weekends: 'free',
  holidays: 'free',
  holidayDates: ['2030-05-09', '2030-05-11'],
  transit: 'charged',
};

describe('days that are charged', () => {
  it('every day is charged unless the terms say otherwise', () => {
    const rule: ChargingRule = { ...FREE, weekends: 'charged', holidays: 'charged', transit: 'free' };
    expect(chargeableDays({ window: rangeOfDays('2030-05-06', 9), rule, transitDays: 2 })).toEqual({
      days: 9,
      sentence: '9 days are charged for 9 days of hire.',
    });
  });

  it('free week-ends and holidays are left out, transit is added, a holiday on a Saturday counts once', () => {
    const answer = chargeableDays({ window: rangeOfDays('2030-05-06', 9), rule: FREE, transitDays: 2 });
    expect(answer.days).toBe(9 - 2 - 1 + 2);
    expect(answer.sentence).toBe(
      '8 days are charged for 9 days of hire, without 2 week-end days and 1 holiday, with 2 transit days.',
    );
  });

  it('a hire over a free week-end is still one day', () => {
    expect(chargeableDays({ window: rangeOfDays('2030-05-11', 2), rule: FREE, transitDays: 0 }).days).toBe(1);
  });
});
