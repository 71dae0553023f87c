import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPrice } from '#lib/checking/check-price.ts';
import type { PricedFigures, PriceFacts } from '#lib/checking/price-facts.ts';
import { cheapestHire, daysToPrice } from '#lib/checking/rental-mix.ts';
import { roundHalfAway } from '#lib/checking/round-half-away.ts';
import type { AccessoryModel, Model } from '#lib/equipment/model.ts';
import { sampleBase } from '#lib/equipment/sample-model.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { roundMinor, toMinor } from '#lib/money/money.ts';
import { chargeableDays } from '#lib/pricing/chargeable-days.ts';
import { LINE_GROUPS } from '#lib/pricing/line-groups.ts';
import { MANUAL_KINDS } from '#lib/pricing/manual-line.ts';
import { MANUAL_UNITS } from '#lib/pricing/manual-units.ts';
import { pricePlan } from '#lib/pricing/price-plan.ts';
import { sampleDrive, sampleHead, sampleRestraint } from '#lib/rules/sample-parts.ts';
import { kilograms } from '#lib/units/quantity.ts';
import { codesOf } from '#tests/support/discrepancy-codes.ts';
import { mutationsOf } from '#tests/support/mutate.ts';

const peg: AccessoryModel = {
  ...sampleBase('SP-8', 'sample pegs'),
  mass: kilograms(0.5),
  counted: true,
  replacement_minor: toMinor(145),
  role: 'accessory',
  facts: { kind: 'pegs', fits: [], saleItem: true },
};
const MODELS: readonly Model[] = [
  sampleDrive({ mass_kg: 20 }),
  sampleHead(),
  sampleRestraint({ number: 'SR-9', madeToOrder: true, mass_kg: 140 }),
  peg,
];

/** 2026-05-01 is a Friday: of eleven days four fall on week-ends and one is a holiday, so six are charged. */
const FACTS: Omit<PriceFacts, 'priced'> = {
  models: MODELS,
  kits: [
    {
      items: [
        { item: 'SD-1', count: 1 },
        { item: 'SH-1', count: 2 },
        { item: 'SP-8', count: 8 },
      ],
      time_s: 30_000,
    },
    {
      items: [
        { item: 'SD-1', count: 1 },
        { item: 'SR-9', count: 1 },
      ],
      time_s: 6001,
    },
  ],
  startsOn: '2026-05-01',
  days: 11,
  charging: { weekends: 'free', holidays: 'free', holidayDates: ['2026-05-05', '2026-05-02'] },
  terms: {
    currency: 'EUR',
    taxCategories: [
      { code: 'S', name: 'Standard', percent: 21 },
      { code: 'E', name: 'Exempt', percent: 0, reason: 'no insurance' },
      { code: 'Z', name: 'Zero', percent: 0 },
    ],
    taxOf: { hire: 'S', waiver: 'E', sale: 'S', delivery: 'S', labour: 'S' },
    waiver: { percent: 12 },
    daysPerWeek: 5,
  },
  waiver: 'taken',
  band: { delivery_minor: 6200, collection_minor: 6100, included_kg: 150, per_extra_100_kg_minor: 900 },
  operated_minor_per_hour: 5500,
  manual: [
    { kind: 'transport', quantity: 2, unit: 'piece', unit_minor: 4500, per: 'once', tax: 'S', list_minor: 5000 },
    { kind: 're-hired', quantity: 1, unit: 'piece', unit_minor: 1250, per: 'day', tax: 'S', list_minor: null },
    { kind: 'training', quantity: 1.5, unit: 'hour', unit_minor: 8000, per: 'once', tax: 'Z', list_minor: 7000 },
    { kind: 'transport', quantity: 3, unit: 'kilometre', unit_minor: 0, per: 'once', tax: 'S', list_minor: null },
  ],
  discounts: { groups: [{ group: 'hire', percent: 7.5 }], whole: { percent: 2 } },
  depositPercent: 30,
};

/**
 * By hand. Rates 20 a day, 70 a week, 200 for four weeks: six charged days at five a week are a week and a day, 90.00.
 * Goods: drive 2 × 9000, head 2 × 9000, restraint 9000, pegs 8 × 145 = 1160. Hire 45 000, discount 3375, leaves 41 625.
 * Mass 40 + 12 + 140 + 4 = 196 kg: one started hundred more. Labour 36 001 s × 5500 / 3600 = 55 001.5, rounded to 55 002.
 * Typed: transport 2 × 4500 = 9000 (listed 10 000), re-hired 6 days × 1250 = 7500, training 1.5 × 8000 = 12 000 at zero rate.
 * Taxed at 21 %: 41 625 + 1160 + 7100 + 7000 + 9000 + 55 002 + 7500 = 128 387; 2 % of it is 2568, of the training 240.
 * Waiver: 2 % of 41 625 is 833, and 12 % of the 40 792 left is 4895. Tax 21 % of 125 819 = 26 421.99.
 * Net 125 819 + 4895 + 11 760 = 142 474, gross 168 896. Given: goods 2 % of 1160 = 23, transport 462 + 1000 under the list,
 * people 1100 + 240, re-hired 150.
 * Buying at 1000.00: four four-weeks (80 days) make 800.00, and 13 days more are two weeks and three days, 200.00: the 93rd day.
 */
const goods = (kind: string, number: string, quantity: number, unit: number): PricedFigures['lines'][number] => ({
  kind,
  number,
  quantity,
  unit_minor: unit,
  net_minor: unit * quantity,
  tax: 'S',
  purchase_after_days: kind === 'hire' ? 93 : null,
});
const PRICED: PricedFigures = {
  currency: 'EUR',
  days: 6,
  lines: [
    goods('hire', 'SD-1', 2, 9000),
    goods('hire', 'SH-1', 2, 9000),
    goods('workshop enquiry', 'SR-9', 1, 9000),
    goods('sale', 'SP-8', 8, 145),
    { ...goods('transport', '', 2, 4500), unit: 'piece' },
    { ...goods('re-hired', '', 6, 1250), unit: 'day' },
    { ...goods('training', '', 1.5, 8000), unit: 'hour', tax: 'Z' },
    { ...goods('transport', '', 3, 0), unit: 'kilometre' },
    goods('delivery', '', 1, 7100),
    goods('collection', '', 1, 7000),
    { ...goods('labour', '', 36_001 / 3600, 5500), net_minor: 55_002 },
    goods('discount', '', 1, -3375),
    goods('discount', '', 1, -2568),
    { ...goods('discount', '', 1, -240), tax: 'Z' },
    { ...goods('waiver', '', 1, 4895), tax: 'E' },
  ],
  hire_minor: 45_000,
  groups: [
    { group: 'hire', listed_minor: 45_000, given_minor: 4208 },
    { group: 'goods', listed_minor: 1160, given_minor: 23 },
    { group: 'transport', listed_minor: 24_100, given_minor: 1462 },
    { group: 'people', listed_minor: 67_002, given_minor: 1340 },
    { group: 're-hired', listed_minor: 7500, given_minor: 150 },
  ],
  taxes: [
    { code: 'S', name: 'Standard', percent: 21, taxable_minor: 125_819, tax_minor: 26_422 },
    { code: 'E', name: 'Exempt', percent: 0, reason: 'no insurance', taxable_minor: 4895, tax_minor: 0 },
    { code: 'Z', name: 'Zero', percent: 0, taxable_minor: 11_760, tax_minor: 0 },
  ],
  net_minor: 142_474,
  tax_minor: 26_422,
  gross_minor: 168_896,
  deposit_minor: 50_669,
};

const codes = (change: Partial<PriceFacts>) =>
  checkPrice({ ...FACTS, priced: PRICED, ...change }).map(({ code }) => code);
const priced = (change: Partial<PricedFigures>): Partial<PriceFacts> => ({ priced: { ...PRICED, ...change } });
const firstLine = (change: Partial<PricedFigures['lines'][number]>) =>
  priced({ lines: PRICED.lines.map((line, index) => (index === 0 ? { ...line, ...change } : line)) });
const firstTax = (change: Partial<PricedFigures['taxes'][number]>) =>
  priced({ taxes: PRICED.taxes.map((tax, index) => (index === 0 ? { ...tax, ...change } : tax)) });

const firstGroup = (change: Partial<PricedFigures['groups'][number]>) =>
  priced({ groups: PRICED.groups.map((group, index) => (index === 0 ? { ...group, ...change } : group)) });

const VIOLATIONS: Readonly<Record<string, Partial<PriceFacts>>> = {
  'price-days': { days: 12 },
  'price-currency': priced({ currency: 'GBP' }),
  'price-item-unknown': { models: MODELS.slice(1) },
  'price-lines': priced({ lines: PRICED.lines.slice(1) }),
  'price-not-whole': firstLine({ net_minor: 18_000.5 }),
  'price-quantity': firstLine({ quantity: 3 }),
  'price-unit': firstLine({ unit_minor: 9001 }),
  'price-line': firstLine({ net_minor: 18_001 }),
  'price-tax-category': firstLine({ tax: 'Z' }),
  'price-counted': firstLine({ unit: 'hour' }),
  'price-groups': priced({ groups: PRICED.groups.slice(1) }),
  'price-listed': firstGroup({ listed_minor: 45_001 }),
  'price-given': firstGroup({ given_minor: 4207 }),
  'price-purchase-days': firstLine({ purchase_after_days: null }),
  'price-taxes': priced({ taxes: PRICED.taxes.slice(1) }),
  'price-tax-words': firstTax({ name: 'Another' }),
  'price-tax-rate': firstTax({ percent: 20 }),
  'price-taxable': firstTax({ taxable_minor: 125_818 }),
  'price-tax': firstTax({ tax_minor: 26_423 }),
  'price-hire': priced({ hire_minor: 45_001 }),
  'price-net': priced({ net_minor: 142_475 }),
  'price-tax-total': priced({ tax_minor: 26_423 }),
  'price-gross': priced({ gross_minor: 168_897 }),
  'price-deposit': { depositPercent: 31 },
};

describe('checking a price', () => {
  it('finds nothing wrong with a price worked out by hand', () => {
    expect(checkPrice({ ...FACTS, priced: PRICED })).toEqual([]);
  });

  it('notices every change of a number, a name or an entry', () => {
    const mutations = mutationsOf(PRICED);
    const missed = mutations.filter((one) => codes({ priced: one.value }).length === 0);
    console.info(`price mutations: ${mutations.length} made, ${mutations.length - missed.length} noticed`);
    expect(missed.map((one) => `${one.at} ${one.how}`)).toEqual([]);
    expect(mutations.length).toBeGreaterThan(120);
  });

  it.each(Object.entries(VIOLATIONS))('says %s', (code, change) => expect(codes(change)).toContain(code));

  it('has a violation for every kind of discrepancy that its sources can tell', () => {
    expect(Object.keys(VIOLATIONS).toSorted()).toEqual(codesOf('price'));
  });

  it('agrees with the pricing on random plans, rates and terms', () => {
    let checked = 0;
    fc.assert(
      fc.property(RANDOM, ({ counts, rates, ...change }) => {
        const models = MODELS.map((model) => ({ ...model, rates }));
        const items = models.map((model, index) => ({ model, count: counts[index] ?? 0 }));
        const facts = {
          ...FACTS,
          ...change,
          models,
          kits: [{ items: items.map(({ model, count }) => ({ item: model.number, count })), time_s: change.time }],
        };
        expect(checkPrice({ ...facts, priced: pricedBy(facts, items) })).toEqual([]);
        checked += 1;
      }),
      { seed: 41, numRuns: 300 },
    );
    console.info(`prices: ${checked} random prices found the same by both`);
    expect(checked).toBe(300);
  });
});

const amount = (most: number) => fc.integer({ min: 1, max: most });
const PERCENT = fc.integer({ min: 0, max: 10_000 }).map((hundredths) => hundredths / 100);
const MANUAL_LINE = fc.record({
  kind: fc.constantFrom(...MANUAL_KINDS),
  quantity: fc.integer({ min: 1, max: 30_000 }).map((thousandths) => thousandths / 1000),
  unit: fc.constantFrom(...MANUAL_UNITS),
  unit_minor: fc.integer({ min: 0, max: 90_000 }).map(toMinor),
  per: fc.constantFrom('day' as const, 'once' as const),
  tax: fc.constantFrom('S', 'E', 'Z'),
  list_minor: fc.option(fc.integer({ min: 0, max: 90_000 }).map(toMinor)),
});
const RANDOM = fc.record({
  counts: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 4, maxLength: 4 }),
  rates: fc.tuple(amount(9000), amount(60_000), amount(200_000), amount(9)).map(([day, week, long, minimum_days]) => ({
    day_minor: toMinor(day),
    week_minor: toMinor(week),
    four_weeks_minor: toMinor(long),
    minimum_days,
  })),
  time: fc.integer({ min: 0, max: 500_000 }),
  days: amount(120),
  waiver: fc.constantFrom('taken' as const, 'declined' as const),
  manual: fc.array(MANUAL_LINE, { maxLength: 6 }),
  discounts: fc.record({
    groups: fc.uniqueArray(fc.record({ group: fc.constantFrom(...LINE_GROUPS), percent: PERCENT }), {
      selector: ({ group }) => group,
      maxLength: 5,
    }),
    whole: fc.option(fc.record({ percent: PERCENT })),
  }),
  depositPercent: fc.option(fc.integer({ min: 1, max: 60 })),
  operated_minor_per_hour: fc.option(amount(9000)),
});

type Random = typeof RANDOM extends fc.Arbitrary<infer Value> ? Value : never;
type Typed = Pick<Random, 'manual' | 'discounts'>;

function pricedBy(
  facts: Omit<PriceFacts, 'priced' | 'models' | 'manual' | 'discounts'> & Typed,
  items: readonly { readonly model: Model; readonly count: number }[],
) {
  const { band, charging, manual, discounts, depositPercent, operated_minor_per_hour: rate, terms } = facts;
  const hours = facts.kits.reduce((sum, kit) => sum + kit.time_s, 0) / 3600;
  return pricePlan({
    items,
    days: chargeableDays({
      window: rangeOfDays(facts.startsOn, facts.days),
      rule: { ...charging, transit: 'free' },
      transitDays: 0,
    }).days,
    terms: {
      ...terms,
      daysPerWeek: terms.daysPerWeek === 5 ? 5 : 7,
      waiver: { ...terms.waiver, leavesOut: [] },
      unusedReturnCreditPercent: 85,
    },
    waiver: facts.waiver,
    deliveryBand:
      band === null
        ? null
        : {
            id: 'near',
            name: 'near',
            delivery_minor: toMinor(band.delivery_minor),
            collection_minor: toMinor(band.collection_minor),
            included_kg: band.included_kg,
            per_extra_100_kg_minor: toMinor(band.per_extra_100_kg_minor),
          },
    labour: rate === null ? null : { hours, minor_per_hour: toMinor(rate) },
    manual: manual.map((line, index) => ({ ...line, id: String(index), text: line.kind, rehired: null })),
    discounts: {
      groups: discounts.groups.map((one) => ({ ...one, reason: 'agreed' })),
      whole: discounts.whole === null ? null : { ...discounts.whole, reason: 'agreed' },
    },
    deposit: depositPercent === null ? null : { percentOfGross: depositPercent, reason: 'new' },
  });
}

describe('the arithmetic of the check', () => {
  const rates = { day_minor: toMinor(20), week_minor: toMinor(70), four_weeks_minor: toMinor(200), minimum_days: 3 };
  const hire = (days: number, daysPerWeek = 7) => cheapestHire({ rates, days, daysPerWeek });

  it('finds the cheapest mix, and the minimum', () => {
    expect([1, 3, 4, 7, 9, 21, 22, 28, 29].map((days) => hire(days))).toEqual([
      60, 60, 70, 70, 110, 200, 200, 200, 220,
    ]);
    expect(hire(6, 5)).toBe(90);
  });

  it('finds the first day that costs as much as a new one', () => {
    for (const price of [1, 60, 61, 70, 500, 1999]) {
      const day = daysToPrice({ rates, daysPerWeek: 7, price });
      const first = Array.from({ length: 400 }, (_, index) => index + 1).find((days) => hire(days) >= price);
      expect(day).toBe(first);
    }
    expect(daysToPrice({ rates, daysPerWeek: 7, price: 1e9 })).toBeNull();
  });

  it('rounds halves away from nought, as the pricing does', () => {
    expect([0.5, 1.5, -0.5, 2.4999, 1.005 * 100].map((value) => roundHalfAway(value, 1))).toEqual([1, 2, -1, 2, 101]);
    for (let cents = -500; cents <= 500; cents += 1) {
      expect(roundHalfAway(cents * 21, 100) + 0).toBe(roundMinor((cents * 21) / 100) + 0);
    }
  });
});
