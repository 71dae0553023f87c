import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quotationXml } from '#lib/documents/exchange/quotation-xml.ts';
import { toMinor } from '#lib/money/money.ts';
import { LINE_GROUPS } from '#lib/pricing/line-groups.ts';
import { MANUAL_KINDS } from '#lib/pricing/manual-line.ts';
import { MANUAL_UNITS } from '#lib/pricing/manual-units.ts';
import { pricePlan } from '#lib/pricing/price-plan.ts';
import { demoHouse, demoModels } from '#seeds/load.ts';
import { SAMPLE_CONTEXT } from '#tests/support/papers/sample-plan.ts';
import { schemaComplaints, textsAt } from '#tests/support/papers/xml-schema.ts';

const REFERENCE = process.env.KITWRIGHT_REFERENCE ?? new URL('../../../shared/reference', import.meta.url).pathname;
const QUOTATION = `${REFERENCE}/ubl-2.1/xsd/maindoc/UBL-Quotation-2.1.xsd`;
const HOUSE = demoHouse();
const HIRED = demoModels().filter(({ role }) => role === 'drive');

const PERCENT = fc.integer({ min: 0, max: 10_000 }).map((hundredths) => hundredths / 100);
const LINE = fc.record({
  kind: fc.constantFrom(...MANUAL_KINDS),
  quantity: fc.integer({ min: 1, max: 40_000 }).map((thousandths) => thousandths / 1000),
  unit: fc.constantFrom(...MANUAL_UNITS),
  unit_minor: fc.integer({ min: 0, max: 2_000_000 }).map(toMinor),
  per: fc.constantFrom('day' as const, 'once' as const),
  tax: fc.constantFrom('S', 'E', 'Z'),
});
const OFFER = fc.record({
  count: fc.integer({ min: 1, max: 6 }),
  days: fc.integer({ min: 1, max: 60 }),
  lines: fc.array(LINE, { maxLength: 8 }),
  groups: fc.uniqueArray(fc.record({ group: fc.constantFrom(...LINE_GROUPS), percent: PERCENT }), {
    selector: ({ group }) => group,
  }),
  whole: fc.option(PERCENT),
  deposit: fc.option(fc.integer({ min: 1, max: 90 })),
});
type Offer = typeof OFFER extends fc.Arbitrary<infer Value> ? Value : never;

function priced({ count, days, lines, groups, whole, deposit }: Offer) {
  return pricePlan({
    items: HIRED.slice(0, 2).map((model) => ({ model, count })),
    days,
    terms: HOUSE.pricing,
    waiver: 'taken',
    deliveryBand: HOUSE.deliveryBands[0] ?? null,
    labour: null,
    manual: lines.map((line, index) => ({
      ...line,
      id: String(index),
      text: line.kind,
      list_minor: null,
      rehired: null,
    })),
    discounts: {
      groups: groups.map((one) => ({ ...one, reason: 'agreed' })),
      whole: whole === null ? null : { percent: whole, reason: 'agreed' },
    },
    deposit: deposit === null ? null : { percentOfGross: deposit, reason: 'new' },
  });
}

function xmlOf(price: ReturnType<typeof priced>): string {
  return quotationXml({
    context: SAMPLE_CONTEXT,
    validUntil: '2031-04-03',
    currency: price.currency,
    lines: price.lines.map(({ kind, unit, tax, ...line }) => ({
      ...line,
      kind: kind === 'discount' ? 'discount' : 'charge',
      unit: unit ?? 'piece',
      taxCategory: tax,
    })),
    taxes: price.taxes,
    net_minor: price.net_minor,
    tax_minor: price.tax_minor,
    gross_minor: price.gross_minor,
    payment: ['A deposit is due with the order.'],
    notes: [],
    terms: [],
  });
}

/** Digits alone: amounts of a currency with two decimals, as whole cents. */
const cents = (xml: string, path: string): readonly number[] =>
  textsAt(xml, path).map((text) => Number(text.replace('.', '')));
const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

/**
 * EN 16931-1:2017, business rules BR-CO-10 (lines), BR-CO-11 (allowances), BR-CO-13 (without tax), BR-CO-14 (taxes),
 * BR-CO-15 (with tax), BR-CO-16 (payable; nothing is paid yet), BR-CO-17 (tax of a category) and BR-27 (no price below
 * nought), read from the XML alone; rule texts from memory of the standard.
 */
describe('a quotation with lines by hand, discounts and a deposit', () => {
  it('is valid against the OASIS schema, and its totals are those of its parts', () => {
    let checked = 0;
    let allowances = 0;
    fc.assert(
      fc.property(OFFER, (offer) => {
        const price = priced(offer);
        const xml = xmlOf(price);
        expect(schemaComplaints({ xml, schema: QUOTATION })).toEqual([]);
        const total = (name: string) => cents(xml, `/*/cac:QuotedMonetaryTotal/cbc:${name}`)[0] ?? 0;
        const given = cents(xml, '/*/cac:AllowanceCharge/cbc:Amount');
        const subtotals = cents(xml, '/*/cac:TaxTotal/cac:TaxSubtotal/cbc:TaxableAmount');
        const taxes = cents(xml, '/*/cac:TaxTotal/cac:TaxSubtotal/cbc:TaxAmount');
        const rates = textsAt(xml, '/*/cac:TaxTotal/cac:TaxSubtotal/cac:TaxCategory/cbc:Percent').map(Number);
        expect(total('LineExtensionAmount')).toBe(sum(cents(xml, '//cac:LineItem/cbc:LineExtensionAmount')));
        expect(total('AllowanceTotalAmount')).toBe(sum(given));
        expect(total('TaxExclusiveAmount')).toBe(total('LineExtensionAmount') - sum(given));
        expect(sum(subtotals)).toBe(total('TaxExclusiveAmount'));
        expect(taxes).toEqual(subtotals.map((base, index) => Math.round((base * (rates[index] ?? 0)) / 100 + 1e-9)));
        expect(cents(xml, '/*/cac:TaxTotal/cbc:TaxAmount')).toEqual([sum(taxes)]);
        expect(total('TaxInclusiveAmount')).toBe(total('TaxExclusiveAmount') + sum(taxes));
        expect(total('PayableAmount')).toBe(total('TaxInclusiveAmount'));
        expect(Math.min(...cents(xml, '//cac:Price/cbc:PriceAmount'))).toBeGreaterThanOrEqual(0);
        expect(price.deposit_minor).toBeLessThanOrEqual(price.gross_minor);
        checked += 1;
        allowances += given.length;
      }),
      { seed: 20_261_128, numRuns: 60 },
    );
    console.info(`quotations: ${checked} valid, with ${allowances} allowances among them`);
    expect(checked).toBe(60);
    expect(allowances).toBeGreaterThan(60);
  });
});
