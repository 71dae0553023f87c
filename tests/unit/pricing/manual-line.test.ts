import { describe, expect, it } from 'vitest';
import { toMinor } from '#lib/money/money.ts';
import { type ManualLine, manualPriced } from '#lib/pricing/manual-line.ts';

const LINE: ManualLine = {
  id: 'a',
  kind: 'operated hire',
  text: 'Our operator',
  quantity: 2,
  unit: 'person',
  unit_minor: toMinor(52_000),
  per: 'day',
  tax: 'S',
  list_minor: null,
  rehired: null,
};
const priced = (change: Partial<ManualLine>) =>
  manualPriced({ line: { ...LINE, ...change }, days: 3, currency: 'EUR' });

describe('a line that is added by hand', () => {
  it('is charged on each charged day, and says so', () => {
    expect(priced({})).toMatchObject({ kind: 'operated hire', quantity: 6, unit: 'day', net_minor: 312_000 });
    expect(priced({}).sentence).toBe('2 persons on each of 3 charged days, at EUR 520.00 each a day.');
  });

  it('is charged once otherwise, in its own unit', () => {
    expect(priced({ per: 'once', unit: 'kilometre', quantity: 12.5, unit_minor: toMinor(85) })).toMatchObject({
      quantity: 12.5,
      unit: 'kilometre',
      net_minor: 1063,
      sentence: '12.5 kilometres at EUR 0.85 each.',
    });
    expect(priced({ per: 'once', unit: 'lump sum', quantity: 1 }).sentence).toBe('A lump sum.');
  });

  it('keeps hours as hours when they are charged each day', () => {
    expect(priced({ unit: 'hour', quantity: 7.5, unit_minor: toMinor(6333) })).toMatchObject({
      quantity: 22.5,
      unit: 'hour',
      net_minor: 142_493,
    });
  });

  it('rounds a half away from nought, whatever binary fractions make of it', () => {
    expect(priced({ per: 'once', quantity: 1.005, unit_minor: toMinor(100) }).net_minor).toBe(101);
  });

  it('says of a made-to-fit piece that its price is indicative, and of a re-hired one where it comes from', () => {
    expect(priced({ kind: 'made to fit' }).sentence).toContain('indicative until the workshop has confirmed');
    expect(priced({ kind: 're-hired' }).sentence).toContain('from another house');
  });

  it('stops on a price below nought and on a quantity of more than three decimals', () => {
    expect(() => priced({ unit_minor: toMinor(-1) })).toThrow('BR-27');
    expect(() => priced({ quantity: 0.0001 })).toThrow('at most three decimals');
    expect(() => priced({ quantity: 0 })).toThrow('above nought');
  });
});
