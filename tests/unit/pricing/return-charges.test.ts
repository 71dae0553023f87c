import { describe, expect, it } from 'vitest';
import { toMinor } from '#lib/money/money.ts';
import { returnCharges } from '#lib/pricing/return-charges.ts';
import { decide, totalReturn } from '#lib/pricing/return-decisions.ts';
import type { Cause, ReturnFact, ReturnLine, ReturnQuestion } from '#lib/pricing/return-facts.ts';
import { granted } from '#tests/support/granted.ts';

const TERMS: ReturnQuestion['terms'] = {
  currency: 'EUR',
  taxCategories: [
    { code: 'S', name: 'Standard', percent: 21 },
    { code: 'E', name: 'Exempt', percent: 0, reason: 'no insurance' },
  ],
  taxOf: { hire: 'S', waiver: 'E', sale: 'S', delivery: 'S', labour: 'S' },
  waiver: { percent: 12, leavesOut: ['theft that was not reported within a day'] },
  daysPerWeek: 7,
  unusedReturnCreditPercent: 85,
};
const RATES: ReturnQuestion['rates'] = {
  workshop_minor_per_hour: toMinor(7400),
  cleaning_minor: {
    dirty: toMinor(1800),
    water: toMinor(0),
    sewage: toMinor(9000),
    product: toMinor(14_000),
    unknown: toMinor(14_000),
  },
};
const ABOUT = { about: 'piece 1', number: 'D112', name: 'battery drive', serials: ['D112-03'] };
const repair = (change: Partial<Extract<ReturnFact, { kind: 'repair' }>> = {}): ReturnFact => ({
  ...ABOUT,
  kind: 'repair',
  hours: 1.5,
  parts_minor: toMinor(2000),
  replacement_minor: toMinor(240_000),
  cause: { kind: 'left out', words: 'misuse and overload' },
  words: 'Handle cracked',
  ...change,
});
const loss = (cause: Cause): ReturnFact => ({
  ...ABOUT,
  kind: 'loss',
  count: 1,
  replacement_minor: toMinor(240_000),
  cause,
});

function charged(facts: readonly ReturnFact[], change: Partial<ReturnQuestion> = {}): readonly ReturnLine[] {
  return returnCharges({ terms: TERMS, rates: RATES, waiver: 'taken', facts, ...change });
}

describe('charges of a return', () => {
  it('charges the hire that is more than quoted, with its waiver, and tells the days', () => {
    const facts: readonly ReturnFact[] = [
      {
        ...ABOUT,
        kind: 'hire',
        quoted_minor: toMinor(7200),
        charged_minor: toMinor(9000),
        sentence: '5 days are charged.',
      },
    ];
    expect(charged(facts)).toEqual([
      {
        ...ABOUT,
        kind: 'more hire',
        quantity: 1,
        unit_minor: 1800,
        net_minor: 1800,
        tax: 'S',
        sentence: '5 days are charged. The hire comes to EUR 90.00; EUR 72.00 of it stands in the quote.',
        open: null,
      },
      {
        about: 'waiver',
        number: '',
        name: 'Damage waiver',
        serials: [],
        kind: 'waiver',
        quantity: 1,
        unit_minor: 216,
        net_minor: 216,
        tax: 'E',
        sentence: '12 % of the EUR 18.00 of hire more.',
        open: null,
      },
    ]);
    expect(charged(facts, { waiver: 'declined' }).map(({ kind }) => kind)).toEqual(['more hire']);
  });

  it('gives back hire that was not used, with a quantity below nought and a price above it', () => {
    const [line, waiver] = charged([
      {
        ...ABOUT,
        kind: 'hire',
        quoted_minor: toMinor(9000),
        charged_minor: toMinor(7200),
        sentence: '4 days are charged.',
      },
    ]);
    expect(line).toMatchObject({ kind: 'less hire', quantity: -1, unit_minor: 1800, net_minor: -1800 });
    expect(waiver).toMatchObject({ quantity: -1, unit_minor: 216, net_minor: -216 });
    expect(
      charged([{ ...ABOUT, kind: 'hire', quoted_minor: toMinor(1), charged_minor: toMinor(1), sentence: '' }]),
    ).toEqual([]);
  });

  it('charges cleaning by what stuck to it, nothing where the house asks nothing, and leaves it open without a price', () => {
    const fact = (soil: 'sewage' | 'water'): ReturnFact => ({ ...ABOUT, kind: 'cleaning', soil });
    expect(charged([fact('sewage')])[0]).toMatchObject({
      net_minor: 9000,
      sentence: "It came back from sewage: cleaned at the house's price of EUR 90.00.",
      open: null,
    });
    expect(charged([fact('water')])).toEqual([]);
    expect(charged([fact('sewage')], { rates: { ...RATES, cleaning_minor: {} } })[0]).toMatchObject({
      net_minor: 0,
      sentence: 'It came back from sewage; the house has no price for cleaning it, so one is to be typed.',
      open: 'price',
    });
  });

  it('charges a repair by hours and parts, never more than the replacement value', () => {
    expect(charged([repair()])[0]).toMatchObject({
      net_minor: 13_100,
      sentence:
        'Handle cracked: 1.5 h in the workshop at EUR 74.00 an hour and parts for EUR 20.00. The damage waiver leaves out misuse and overload.',
    });
    expect(charged([repair({ replacement_minor: toMinor(10_000) })])[0]).toMatchObject({
      net_minor: 10_000,
      sentence: expect.stringContaining('No more than its replacement value of EUR 100.00.'),
    });
    expect(charged([repair({ hours: 0, parts_minor: toMinor(0) })])[0]).toMatchObject({ net_minor: 0, open: 'price' });
    expect(charged([repair()], { rates: { ...RATES, workshop_minor_per_hour: null } })[0]?.sentence).toContain(
      'at a price to be typed',
    );
  });

  it('charges a loss less what the damage waiver covers, by what is known of how it happened', () => {
    const lines = (cause: Cause, waiver: 'taken' | 'declined' = 'taken') => charged([loss(cause)], { waiver })[0];
    expect(lines({ kind: 'covered' })).toMatchObject({
      net_minor: 0,
      sentence: 'It did not come back: replacement value EUR 2400.00. The damage waiver covers it.',
      open: null,
    });
    expect(lines({ kind: 'left out', words: 'theft that was not reported within a day' })).toMatchObject({
      net_minor: 240_000,
      sentence: expect.stringContaining('The damage waiver leaves out theft that was not reported within a day.'),
    });
    expect(lines({ kind: 'not known' })).toMatchObject({ net_minor: 240_000, open: 'cause' });
    expect(lines({ kind: 'covered' }, 'declined')).toMatchObject({
      net_minor: 240_000,
      sentence: expect.stringContaining('No damage waiver was taken.'),
      open: null,
    });
  });

  it('charges what was used beyond the quote and credits what came back unused', () => {
    const sold = (used: number): ReturnFact => ({
      ...ABOUT,
      kind: 'sold',
      quoted: 8,
      used,
      price_minor: toMinor(145),
    });
    expect(charged([sold(10)])[0]).toMatchObject({
      kind: 'consumed',
      quantity: 2,
      net_minor: 290,
      sentence: '8 stand in the quote and 10 were used: 2 more at EUR 1.45 each.',
    });
    expect(charged([sold(3)])[0]).toMatchObject({
      kind: 'unused',
      quantity: -5,
      unit_minor: 123,
      net_minor: -615,
      sentence: '8 stand in the quote and 3 were used: 5 came back unused and are credited at 85 % of EUR 1.45 each.',
    });
    expect(charged([sold(8)])).toEqual([]);
    expect(charged([sold(3)], { terms: { ...TERMS, unusedReturnCreditPercent: 0 } })).toEqual([]);
  });
});

describe('a piece that was charged as lost and is found', () => {
  const found = (change: Partial<Extract<ReturnFact, { kind: 'found' }>> = {}): ReturnFact => ({
    ...ABOUT,
    kind: 'found',
    charged_minor: toMinor(240_000),
    note: 'R-00007',
    hire_minor: toMinor(31_500),
    sentence: 'On hire until 2026-04-02.',
    ...change,
  });

  it('is given back as it was charged, less the hire until it was found, without waiver on that hire', () => {
    expect(charged([found()])).toMatchObject([
      { kind: 'found', quantity: -1, unit_minor: 240_000, net_minor: -240_000, tax: 'S', open: null },
      { kind: 'until found', quantity: 1, net_minor: 31_500, tax: 'S', sentence: 'On hire until 2026-04-02.' },
    ]);
    expect(charged([found()])[0]?.sentence).toContain('return note R-00007');
  });

  it('never costs anything in the end, and nothing at all where nothing was charged', () => {
    const lines = charged([found({ charged_minor: toMinor(20_000) })]);
    expect(lines.map(({ net_minor }) => net_minor)).toEqual([-20_000, 20_000]);
    expect(lines[1]?.sentence).toContain('No more is taken than is given back');
    expect(charged([found({ charged_minor: toMinor(0) })])).toEqual([]);
    expect(charged([found({ hire_minor: toMinor(0) })])).toHaveLength(1);
  });
});

describe("the Desk's word on a charge", () => {
  const [line] = charged([loss({ kind: 'left out', words: 'misuse' })]) as readonly [ReturnLine];
  const [open] = charged([loss({ kind: 'not known' })]) as readonly [ReturnLine];
  const [priceless] = charged([repair({ hours: 0, parts_minor: toMinor(0) })]) as readonly [ReturnLine];
  const [credit] = charged([{ ...ABOUT, kind: 'sold', quoted: 8, used: 3, price_minor: toMinor(145) }]) as readonly [
    ReturnLine,
  ];
  const currency = 'EUR';

  it('takes a charge as it is, changes it, or strikes it, and says what was worked out and why', () => {
    expect(granted(decide({ line, decision: { kind: 'approved' }, currency }))).toMatchObject({
      net_minor: 240_000,
      remark: '',
    });
    const changed = { kind: 'changed', net_minor: toMinor(120_000), reason: 'half, as agreed ' } as const;
    expect(granted(decide({ line: open, decision: changed, currency }))).toMatchObject({
      net_minor: 120_000,
      quantity: 1,
      open: null,
      remark: 'EUR 2400.00 was worked out: half, as agreed',
    });
    expect(granted(decide({ line, decision: { kind: 'struck', reason: 'found later' }, currency }))).toMatchObject({
      net_minor: 0,
      remark: 'Not charged; EUR 2400.00 was worked out: found later',
    });
    const less = { kind: 'changed', net_minor: toMinor(-100), reason: 'two are broken' } as const;
    expect(granted(decide({ line: credit, decision: less, currency }))).toMatchObject({
      quantity: -1,
      unit_minor: 100,
    });
  });

  it.each([
    ['charge-open-cause', open, { kind: 'approved' }],
    ['charge-open-price', priceless, { kind: 'approved' }],
    ['charge-reason-missing', line, { kind: 'struck', reason: ' ' }],
    ['charge-turned', credit, { kind: 'changed', net_minor: toMinor(100), reason: 'x' }],
  ] as const)('refuses with %s', (code, refused, decision) => {
    expect(decide({ line: refused, decision, currency })).toMatchObject({ ok: false, reason: { code } });
  });

  it('adds up with tax rounded once for each category', () => {
    const lines = [line, credit].map((one) => granted(decide({ line: one, decision: { kind: 'approved' }, currency })));
    // 240 000 − 615 = 239 385 at 21 % is 50 270.85.
    expect(totalReturn({ lines, currency, categories: TERMS.taxCategories })).toMatchObject({
      net_minor: 239_385,
      tax_minor: 50_271,
      gross_minor: 289_656,
      taxes: [{ code: 'S', taxable_minor: 239_385, tax_minor: 50_271 }],
    });
  });
});
