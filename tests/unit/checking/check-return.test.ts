import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkReturn, checkReturnTotals } from '#lib/checking/check-return.ts';
import type { ChargeFigures, CheckedReturn, ReturnFigures } from '#lib/checking/return-facts.ts';
import { toMinor } from '#lib/money/money.ts';
import { returnCharges } from '#lib/pricing/return-charges.ts';
import { type DecidedLine, decide, totalReturn } from '#lib/pricing/return-decisions.ts';
import { type ReturnFact, SOILS } from '#lib/pricing/return-facts.ts';
import { codesOf } from '#tests/support/discrepancy-codes.ts';
import { granted } from '#tests/support/granted.ts';
import { mutationsOf } from '#tests/support/mutate.ts';

const TERMS = {
  currency: 'EUR',
  taxCategories: [
    { code: 'S', name: 'Standard', percent: 21 },
    { code: 'E', name: 'Exempt', percent: 0, reason: 'no insurance' },
  ],
  taxOf: { hire: 'S', waiver: 'E', sale: 'S', delivery: 'S', labour: 'S' },
  waiver: { percent: 12, leavesOut: ['theft'] },
  daysPerWeek: 7 as const,
  unusedReturnCreditPercent: 85,
};
const RATES = {
  workshop_minor_per_hour: toMinor(7400),
  cleaning_minor: {
    dirty: toMinor(1800),
    water: toMinor(0),
    sewage: toMinor(9000),
    product: toMinor(14_000),
    unknown: toMinor(14_000),
  },
};

/**
 * By hand. More hire 90.00 − 72.00 = 18.00, its waiver 12 % = 2.16. Cleaning from sewage 90.00; water costs nothing and has no line.
 * Repair 1.25 h × 74.00 = 92.50 and parts for 12.35 make 104.85. Loss 2 × 31.00. Used 3 of 8 pegs: 5 × (145 × 85 % = 123.25, rounded to 123) back.
 * Found: 250.00 charged for the loss given back, 40.00 of hire taken off; another charged 30.00 with 45.00 of hire gives 30.00 and takes 30.00.
 * Taxed at 21 %: 1800 + 9000 + 10 485 + 6200 − 615 − 25 000 + 4000 − 3000 + 3000 = 5870, tax 1232.70; exempt 216.
 */
const ASKED: CheckedReturn = {
  terms: TERMS,
  rates: RATES,
  waiver: 'taken',
  facts: [
    { kind: 'hire', about: 'unit 1', quoted_minor: 7200, charged_minor: 9000 },
    { kind: 'cleaning', about: 'piece 1', soil: 'sewage' },
    { kind: 'cleaning', about: 'piece 2', soil: 'water' },
    {
      kind: 'repair',
      about: 'piece 1',
      hours: 1.25,
      parts_minor: 1235,
      replacement_minor: 200_000,
      cause: { kind: 'left out' },
    },
    { kind: 'loss', about: 'item 1', count: 2, replacement_minor: 3100, cause: { kind: 'not known' } },
    { kind: 'sold', about: 'item 2', quoted: 8, used: 3, price_minor: 145 },
    { kind: 'found', about: 'piece 3', charged_minor: 25_000, hire_minor: 4000 },
    { kind: 'found', about: 'piece 4', charged_minor: 3000, hire_minor: 4500 },
    { kind: 'found', about: 'piece 5', charged_minor: 0, hire_minor: 4500 },
  ],
};
const line = (
  kind: string,
  about: string,
  ...[quantity, unit_minor, tax = 'S']: readonly [number, number, string?]
) => ({
  kind,
  about,
  quantity,
  unit_minor,
  net_minor: quantity * unit_minor,
  tax,
});
const LINES: readonly ChargeFigures[] = [
  line('more hire', 'unit 1', 1, 1800),
  line('cleaning', 'piece 1', 1, 9000),
  line('repair', 'piece 1', 1, 10_485),
  line('loss', 'item 1', 2, 3100),
  line('unused', 'item 2', -5, 123),
  line('found', 'piece 3', -1, 25_000),
  line('until found', 'piece 3', 1, 4000),
  line('found', 'piece 4', -1, 3000),
  line('until found', 'piece 4', 1, 3000),
  line('waiver', 'waiver', 1, 216, 'E'),
];
const TOTALS: ReturnFigures = {
  currency: 'EUR',
  lines: LINES,
  taxes: [
    { code: 'S', percent: 21, taxable_minor: 5870, tax_minor: 1233 },
    { code: 'E', percent: 0, taxable_minor: 216, tax_minor: 0 },
  ],
  net_minor: 6086,
  tax_minor: 1233,
  gross_minor: 7319,
};

const codes = ({ lines = LINES, totals = TOTALS }: { lines?: readonly ChargeFigures[]; totals?: ReturnFigures }) =>
  [...checkReturn(ASKED, lines), ...checkReturnTotals(TERMS, totals)].map(({ code }) => code);
const first = (change: Partial<ChargeFigures>) => ({
  lines: LINES.map((one, index) => (index === 0 ? { ...one, ...change } : one)),
});

const VIOLATIONS: Readonly<Record<string, Parameters<typeof codes>[0]>> = {
  'return-lines': { lines: LINES.slice(1) },
  'return-quantity': first({ quantity: 2 }),
  'return-unit': first({ unit_minor: 1801 }),
  'return-line': first({ net_minor: 1799 }),
  'return-tax-category': first({ tax: 'E' }),
  'return-amount': { totals: { ...TOTALS, lines: [{ ...line('loss', 'item 1', -2, -3100) }] } },
  'return-currency': { totals: { ...TOTALS, currency: 'GBP' } },
  'return-taxes': { totals: { ...TOTALS, taxes: TOTALS.taxes.slice(1) } },
  'return-net': { totals: { ...TOTALS, net_minor: 6087 } },
  'return-tax-total': { totals: { ...TOTALS, tax_minor: 1232 } },
  'return-gross': { totals: { ...TOTALS, gross_minor: 7320 } },
};

describe('checking the charges of a return', () => {
  it('finds nothing wrong with charges worked out by hand', () => expect(codes({})).toEqual([]));

  it('notices every change of a number or an entry of the lines and of the totals', () => {
    const lines = mutationsOf(LINES).map((one) => ({ ...one, codes: codes({ lines: one.value }) }));
    const totals = mutationsOf(TOTALS)
      .filter(({ at }) => !/lines\.\d+\.(kind|about)$/.test(at))
      .map((one) => ({ ...one, codes: codes({ totals: one.value }) }));
    const all = [...lines, ...totals];
    const missed = all.filter((one) => one.codes.length === 0);
    console.info(`return mutations: ${all.length} made, ${all.length - missed.length} noticed`);
    expect(missed.map((one) => `${one.at} ${one.how}`)).toEqual([]);
    expect(all.length).toBeGreaterThan(100);
  });

  it.each(Object.entries(VIOLATIONS))('says %s', (code, change) => expect(codes(change)).toContain(code));

  it('has a violation for every kind of discrepancy that its sources can tell', () => {
    expect(Object.keys(VIOLATIONS).toSorted()).toEqual(codesOf('return'));
  });

  it('agrees with the pricing on random returns, also after the Desk decided', () => {
    let checked = 0;
    fc.assert(
      fc.property(RANDOM, ({ facts, waiver, changes, ...terms }) => {
        const asked = { terms: { ...TERMS, ...terms }, rates: RATES, waiver, facts };
        const lines = returnCharges(asked);
        expect(checkReturn(asked, lines)).toEqual([]);
        const decided = lines.map((one, index): DecidedLine => {
          const change = changes[index % changes.length] ?? 0;
          const decision =
            one.open === null && change % 3 === 0
              ? ({ kind: 'approved' } as const)
              : change % 3 === 1
                ? ({ kind: 'struck', reason: 'agreed' } as const)
                : ({ kind: 'changed', net_minor: toMinor(Math.trunc(one.net_minor / 2)), reason: 'agreed' } as const);
          return granted(decide({ line: one, decision, currency: 'EUR' }));
        });
        const total = totalReturn({ lines: decided, currency: 'EUR', categories: TERMS.taxCategories });
        expect(checkReturnTotals(asked.terms, total)).toEqual([]);
        checked += 1;
      }),
      { seed: 43, numRuns: 400 },
    );
    console.info(`returns: ${checked} random returns found the same by both`);
    expect(checked).toBe(400);
  });
});

const MONEY = fc.integer({ min: 0, max: 300_000 }).map(toMinor);
const CAUSE = fc.constantFrom(
  { kind: 'not known' as const },
  { kind: 'covered' as const },
  { kind: 'left out' as const, words: 'theft' },
);
const ABOUT = { number: fc.constant('SD-1'), name: fc.constant('sample'), serials: fc.constant([]) };
const FACT = fc.oneof(
  fc.record({
    kind: fc.constant('hire' as const),
    ...ABOUT,
    quoted_minor: MONEY,
    charged_minor: MONEY,
    sentence: fc.constant('x'),
  }),
  fc.record({ kind: fc.constant('cleaning' as const), ...ABOUT, soil: fc.constantFrom(...SOILS) }),
  fc.record({
    kind: fc.constant('repair' as const),
    ...ABOUT,
    hours: fc.integer({ min: 0, max: 4000 }).map((hundredths) => hundredths / 100),
    parts_minor: MONEY,
    replacement_minor: MONEY,
    cause: CAUSE,
    words: fc.constant('bent'),
  }),
  fc.record({
    kind: fc.constant('loss' as const),
    ...ABOUT,
    count: fc.integer({ min: 1, max: 9 }),
    replacement_minor: MONEY,
    cause: CAUSE,
  }),
  fc.record({
    kind: fc.constant('sold' as const),
    ...ABOUT,
    quoted: fc.integer({ min: 0, max: 20 }),
    used: fc.integer({ min: 0, max: 20 }),
    price_minor: MONEY,
  }),
  fc.record({
    kind: fc.constant('found' as const),
    ...ABOUT,
    charged_minor: MONEY,
    note: fc.constant('R-00001'),
    hire_minor: MONEY,
    sentence: fc.constant('x'),
  }),
);
const RANDOM = fc.record({
  facts: fc
    .array(FACT, { maxLength: 9 })
    .map((facts): readonly ReturnFact[] => facts.map((fact, index) => ({ ...fact, about: `piece ${index}` }))),
  waiver: fc.constantFrom('taken' as const, 'declined' as const),
  unusedReturnCreditPercent: fc.integer({ min: 0, max: 100 }),
  changes: fc.array(fc.integer({ min: 0, max: 8 }), { minLength: 1, maxLength: 9 }),
});
