import { describe, expect, it } from 'vitest';
import type { RateCard } from '#lib/equipment/model.ts';
import { currencyDecimals } from '#lib/money/currency.ts';
import { toMinor } from '#lib/money/money.ts';
import { bestRate } from '#lib/pricing/best-rate.ts';
import { taxTotals } from '#lib/pricing/tax-totals.ts';

function card(rates: readonly [number, number, number]): RateCard {
  const [day, week, fourWeeks] = rates;
  return { day_minor: toMinor(day), week_minor: toMinor(week), four_weeks_minor: toMinor(fourWeeks), minimum_days: 1 };
}

describe('cheapest mix of rates, 100 a day, 300 a week, 800 for four weeks', () => {
  /*
   * 9 and 21 days: common practice, a general plant-hire question page with these two answers, no standard.
   * The other days are derived from the same rule (cheapest cover), from memory.
   */
  it.each([
    [1, 100],
    [3, 300],
    [4, 300],
    [8, 400],
    [9, 500],
    [14, 600],
    [21, 800],
    [28, 800],
    [29, 900],
  ])('%i days cost %i', (days, charge) => {
    expect(bestRate({ rates: card([100, 300, 800]), days }).total_minor).toBe(charge);
  });
});

describe('a five-day week with free week-ends', () => {
  /* Common practice: week 200, each further weekday 200/5; a general plant-hire question page, no standard. */
  it.each([
    [6, 240],
    [7, 280],
    [8, 320],
    [9, 360],
  ])('%i charged weekdays cost %i', (days, charge) => {
    expect(bestRate({ rates: card([40, 200, 800]), days, daysPerWeek: 5 }).total_minor).toBe(charge);
  });
});

describe('a seventh of the week for each further day', () => {
  /* Common practice: week 140, ten days cost 140 and three sevenths of it; the rule from a general plant-hire question page, the figures ours. */
  it('ten days cost 200', () => {
    expect(bestRate({ rates: card([20, 140, 560]), days: 10 }).total_minor).toBe(200);
  });
});

describe('decimals of a currency', () => {
  /* ISO 4217, from memory. */
  it.each([
    ['GBP', 2],
    ['EUR', 2],
    ['USD', 2],
    ['JPY', 0],
    ['KWD', 3],
  ])('%s has %i', (currency, decimals) => expect(currencyDecimals(currency)).toBe(decimals));
});

interface Example {
  readonly name: string;
  readonly categories: readonly (readonly [taxable_minor: number, percent: number, tax_minor: number])[];
  readonly net: number;
  readonly tax: number;
  readonly gross: number;
}

/* EN 16931 example files ubl-tc434-example1 to 4 of the CEN/TC 434 validation artefacts. */
const EXAMPLES: readonly Example[] = [
  {
    name: 'example 1',
    categories: [
      [18323, 6, 1099],
      [4637, 21, 974],
    ],
    net: 22960,
    tax: 2073,
    gross: 25033,
  },
  {
    name: 'example 2',
    categories: [
      [146050, 25, 36513],
      [100, 15, 15],
      [-2500, 0, 0],
    ],
    net: 143650,
    tax: 36528,
    gross: 180178,
  },
  {
    name: 'example 3',
    categories: [
      [90000, 25, 22500],
      [80000, 10, 8000],
    ],
    net: 170000,
    tax: 30500,
    gross: 200500,
  },
  {
    name: 'example 4',
    categories: [
      [150000, 25, 37500],
      [250000, 12, 30000],
    ],
    net: 400000,
    tax: 67500,
    gross: 467500,
  },
];

describe('tax totals of EN 16931', () => {
  it.each(EXAMPLES)('$name comes out as published', ({ categories, net, tax, gross }) => {
    const listed = categories.map(([, percent], index) => ({ code: `T${index}`, name: `${percent} %`, percent }));
    const lines = categories.map(([taxable], index) => ({ net_minor: toMinor(taxable), tax: `T${index}` }));
    const totals = taxTotals({ lines, categories: listed });
    expect(totals.taxes.map((sum) => sum.tax_minor)).toEqual(categories.map(([, , amount]) => amount));
    expect([totals.net_minor, totals.tax_minor, totals.gross_minor]).toEqual([net, tax, gross]);
  });

  /* OASIS UBL 2.1 quotation example: 35 × 4300, 1250, 50 and 50 DKK at 25 %. */
  it('the OASIS quotation example comes to 247 187.50', () => {
    const categories = [{ code: 'S', name: 'Standard', percent: 25 }];
    const lines = [4300, 1250, 50, 50].map((price) => ({ net_minor: toMinor(35 * price * 100), tax: 'S' }));
    const totals = taxTotals({ lines, categories });
    expect([totals.net_minor, totals.tax_minor, totals.gross_minor]).toEqual([19_775_000, 4_943_750, 24_718_750]);
  });

  it('rounds tax per category and not per line (rule BR-CO-17)', () => {
    const categories = [{ code: 'S', name: 'Standard', percent: 21 }];
    const lines = Array.from({ length: 7 }, () => ({ net_minor: toMinor(7), tax: 'S' }));
    const perLine = 7 * Math.round(7 * 0.21);
    const { tax_minor } = taxTotals({ lines, categories });
    expect(perLine).toBe(7);
    expect(tax_minor).toBe(10);
  });
});
