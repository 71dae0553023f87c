import { describe, expect, it } from 'vitest';
import { dateIn, figuresIn, momentIn, moneyIn, windowIn } from '#lib/documents/words/person-forms.ts';

describe('dates and figures as a person likes them', () => {
  it.each([
    ['written', '2 March 2026'],
    ['iso', '2026-03-02'],
    ['day-month-year', '02.03.2026'],
    ['month-day-year', '03/02/2026'],
  ] as const)('a day %s is %s', (form, text) => {
    expect(dateIn('2026-03-02', form)).toBe(text);
    expect(momentIn('2026-03-02T08:05:30.000Z', form)).toBe(`${text}, 08:05`);
  });

  it('a window says its last day, not the day after it', () => {
    expect(windowIn({ starts_on: '2026-03-02', ends_before: '2026-03-07' }, 'iso')).toBe(
      '2026-03-02 to 2026-03-06 (5 days)',
    );
    expect(windowIn({ starts_on: '2026-03-02', ends_before: '2026-03-03' }, 'iso')).toBe('2026-03-02 (1 day)');
  });

  it('a comma stands only between figures, and money keeps its spaces', () => {
    expect(figuresIn('12.5…18 N·m.', 'comma')).toBe('12,5…18 N·m.');
    expect(figuresIn('12.5', 'point')).toBe('12.5');
    expect(moneyIn({ amount_minor: 1_234_560, currency: 'EUR', mark: 'comma' })).toBe('12 345,60');
  });
});
