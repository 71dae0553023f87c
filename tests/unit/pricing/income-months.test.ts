import { describe, expect, it } from 'vitest';
import { incomeByMonth } from '#lib/pricing/income-months.ts';

const asked = { currency: 'EUR', today: '2026-02-15', back: 2, ahead: 1 };

function quote(startsOn: string, net_minor: number, currency = 'EUR') {
  return { startsOn, net_minor, currency };
}

describe('hire income by month', () => {
  it('names every month asked for, over the turn of the year', () => {
    const { months } = incomeByMonth({ quotes: [], ...asked });
    expect(months.map(({ month }) => month)).toEqual(['2025-12', '2026-01', '2026-02', '2026-03']);
    expect(months.every(({ net_minor, quotes }) => net_minor === 0 && quotes === 0)).toBe(true);
  });

  it('adds a quote to the month in which its hire starts, first and last day alike', () => {
    const quotes = [quote('2026-01-01', 100), quote('2026-01-31', 250), quote('2026-03-02', 7), quote('2026-04-01', 9)];
    const { months } = incomeByMonth({ quotes, ...asked });
    expect(months.map(({ net_minor, quotes: count }) => [net_minor, count])).toEqual([
      [0, 0],
      [350, 2],
      [0, 0],
      [7, 1],
    ]);
  });

  it('never adds another currency, and says how many there are', () => {
    const { months, others } = incomeByMonth({
      quotes: [quote('2026-02-01', 100), quote('2026-02-01', 99, 'USD')],
      ...asked,
    });
    expect(months[2]?.net_minor).toBe(100);
    expect(others).toBe(1);
  });
});
