import { describe, expect, it } from 'vitest';
import { readAmount } from '#lib/money/read-amount.ts';

describe('an amount as it is typed', () => {
  it.each([
    ['98', 'EUR', 9800],
    ['1234.5', 'EUR', 123_450],
    ['1 234,50', 'EUR', 123_450],
    ['0.07', 'EUR', 7],
    ['1.005', 'KWD', 1005],
    ['98', 'JPY', 98],
    [' 12 ', 'EUR', 1200],
  ])('%s %s is %i minor units', (text, currency, minor) => expect(readAmount(text, currency)).toBe(minor));

  it.each([
    ['more decimals than the currency has', '1.005', 'EUR'],
    ['decimals where it has none', '98.5', 'JPY'],
    ['a point for thousands and a comma for decimals, which could be either', '1.234,50', 'EUR'],
    ['less than nought', '-5', 'EUR'],
    ['no number', 'ten', 'EUR'],
    ['nothing', '', 'EUR'],
  ])('%s is no amount', (_, text, currency) => expect(readAmount(text, currency)).toBeNull());
});
