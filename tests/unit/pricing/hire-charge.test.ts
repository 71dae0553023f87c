import { describe, expect, it } from 'vitest';
import { toMinor } from '#lib/money/money.ts';
import { type HiredPiece, type HireTerms, hireCharge } from '#lib/pricing/hire-charge.ts';

/** Invented rates: a week costs as much as four days, four weeks as much as three weeks. */
const RATES = {
  day_minor: toMinor(50_00),
  week_minor: toMinor(200_00),
  four_weeks_minor: toMinor(600_00),
  minimum_days: 2,
};

/** Monday 2 March to Friday 6 March 2026. */
const PIECE: HiredPiece = {
  about: 'unit 1',
  number: 'DRV-1',
  name: 'Drive',
  serials: ['DRV-1-001'],
  count: 1,
  rates: RATES,
  quotedEach_minor: toMinor(200_00),
  window: { starts_on: '2026-03-02', ends_before: '2026-03-07' },
  outOn: '2026-03-02',
  backOn: null,
  lostOn: null,
  notice: null,
  isReleased: false,
};

const TERMS: HireTerms = {
  rule: { weekends: 'charged', holidays: 'charged', holidayDates: [], transit: 'free' },
  daysPerWeek: 7,
  chargeEnds: 'off-hire notice',
  currency: 'EUR',
  discounts: { groups: [], whole: null },
  today: '2026-03-04',
};

const NOTICE = { number: 'N-00003', on: '2026-03-04' };

function charge(piece: Partial<HiredPiece>, terms: Partial<HireTerms> = {}) {
  const { change, days, end } = hireCharge({ piece: { ...PIECE, ...piece }, terms: { ...TERMS, ...terms } });
  return { charged: change.charged_minor, quoted: change.quoted_minor, days, end, sentence: change.sentence };
}

describe('the hire of a piece', () => {
  it('stands as agreed while it is on hire and its last day is not past', () => {
    expect(charge({})).toMatchObject({ charged: 200_00, quoted: 200_00, days: 5, end: 'agreed' });
    expect(charge({}, { today: '2026-03-06' }).end).toBe('agreed');
    expect(charge({ outOn: null }, { today: '2026-03-20' }).end).toBe('agreed');
  });

  it('runs on past its last day until a notice is given or it is back', () => {
    expect(charge({}, { today: '2026-03-10' })).toMatchObject({ charged: 300_00, days: 9, end: 'running' });
  });

  it('ends with the day of the notice where the terms say so, whenever it comes back', () => {
    expect(charge({ notice: NOTICE, backOn: '2026-03-09' })).toMatchObject({
      charged: 150_00,
      days: 3,
      end: 'notice',
      sentence:
        "On hire from 2026-03-02 to 2026-03-04, when off-hire notice N-00003 was given. 3 days are charged for 3 days of hire. At the cheapest mix of the quote's rates, 3 days: EUR 150.00.",
    });
    expect(charge({ notice: { ...NOTICE, on: '2026-03-09' }, backOn: '2026-03-05' })).toMatchObject({
      days: 4,
      end: 'collection',
    });
  });

  it('ends with the day of collection where the terms say that, whatever was said before', () => {
    const terms = { chargeEnds: 'collection' } as const;
    expect(charge({ notice: NOTICE, backOn: '2026-03-09' }, terms)).toMatchObject({
      charged: 250_00,
      days: 8,
      end: 'collection',
    });
    expect(charge({ notice: NOTICE }, { ...terms, today: '2026-03-10' })).toMatchObject({ days: 9, end: 'running' });
  });

  it('is never less than the minimum, and never for less than a day', () => {
    expect(charge({ notice: { ...NOTICE, on: '2026-03-02' } })).toMatchObject({ charged: 100_00, days: 1 });
    expect(charge({ notice: { ...NOTICE, on: '2026-03-02' }, outOn: '2026-03-03' })).toMatchObject({ days: 1 });
  });

  it('begins with the day on which a part delivery left, and not before the first day', () => {
    expect(charge({ outOn: '2026-03-04' })).toMatchObject({ charged: 150_00, days: 3 });
    expect(charge({ outOn: '2026-02-27' })).toMatchObject({ days: 5 });
  });

  it('follows an extension at the cheapest mix over all days, not as a second hire', () => {
    const window = { starts_on: '2026-03-02', ends_before: '2026-03-30' };
    expect(charge({ window })).toMatchObject({ charged: 600_00, quoted: 200_00, days: 28 });
  });

  it('leaves out week-ends and holidays as the quote does', () => {
    const rule = { weekends: 'free', holidays: 'free', holidayDates: ['2026-03-04'], transit: 'free' } as const;
    const window = { starts_on: '2026-03-02', ends_before: '2026-03-09' };
    expect(charge({ window }, { rule, daysPerWeek: 5 })).toMatchObject({ charged: 200_00, days: 4 });
  });

  it('carries the discounts of the quote, each rounded once, on both sides', () => {
    const discounts = {
      groups: [{ group: 'hire', percent: 10, reason: 'frame agreement' }],
      whole: { percent: 2.5, reason: 'prompt order' },
    } as const;
    const { charged, quoted, sentence } = charge({ notice: NOTICE }, { discounts });
    expect([charged, quoted]).toEqual([13_162, 175_50]);
    expect(sentence).toContain('less 10 % as quoted, less 2.5 % as quoted');
  });

  it('ends when it was reported lost', () => {
    expect(charge({ lostOn: '2026-03-03' })).toMatchObject({ days: 2, end: 'loss' });
  });

  it('is nothing for what was given up before it left', () => {
    expect(charge({ isReleased: true, outOn: null })).toMatchObject({ charged: 0, quoted: 200_00, end: 'never left' });
  });

  it('counts pieces without serial numbers by their number', () => {
    expect(charge({ count: 3 })).toMatchObject({ charged: 600_00, quoted: 600_00 });
  });
});
