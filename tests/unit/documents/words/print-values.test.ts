import { describe, expect, it } from 'vitest';
import {
  countText,
  dateText,
  hoursText,
  listText,
  massText,
  moneyText,
  tagsText,
  windowText,
} from '#lib/documents/words/print-values.ts';

describe('small prints of papers', () => {
  it.each([
    [2_378_968, 'EUR', '23 789.68'],
    [5, 'EUR', '0.05'],
    [-141_120, 'GBP', '−1 411.20'],
    [1_234_567, 'JPY', '1 234 567'],
    [1_234_567, 'KWD', '1 234.567'],
    [0, 'USD', '0.00'],
    [100_000, 'USD', '1 000.00'],
  ] as const)('prints %i minor units of %s as %s', (amount, currency, text) => {
    expect(moneyText(amount, currency)).toBe(text);
  });

  it('writes dates out and counts the days of a half-open window', () => {
    expect(dateText('2031-03-04')).toBe('4 March 2031');
    expect(windowText({ starts_on: '2031-03-17', ends_before: '2031-03-22' })).toBe(
      '17 March 2031 to 21 March 2031 (5 days)',
    );
    expect(windowText({ starts_on: '2031-02-28', ends_before: '2031-03-01' })).toBe('28 February 2031 (1 day)');
  });

  it('prints counts, hours and masses as people say them', () => {
    expect(countText(1, 'valve')).toBe('1 valve');
    expect(countText(0, 'valve')).toBe('0 valves');
    expect(hoursText(1.999)).toBe('2 h 00 min');
    expect(hoursText(36.4)).toBe('36 h 24 min');
    expect(massText(18.44, 'si')).toBe('18.4 kg');
    expect(massText(118.6, 'si')).toBe('119 kg');
    expect(massText(18.44, 'us')).toBe('40.7 lb');
    expect(massText(118.6, 'us')).toBe('261 lb');
  });

  it('joins words and shortens long lists of tags by count', () => {
    expect(listText([])).toBe('');
    expect(listText(['a', 'b', 'c'])).toBe('a, b and c');
    expect(tagsText(['a', 'b', 'c', 'd'], 2)).toBe('a, b and 2 more');
  });
});
