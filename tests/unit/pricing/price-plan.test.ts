import { describe, expect, it } from 'vitest';
import type { Model } from '#lib/equipment/model.ts';
import { toMinor } from '#lib/money/money.ts';
import { bestRate } from '#lib/pricing/best-rate.ts';
import { NO_DISCOUNTS } from '#lib/pricing/discounts.ts';
import { type PricingInput, pricePlan } from '#lib/pricing/price-plan.ts';
import { demoHouse, demoModels } from '#seeds/load.ts';

const MODELS = demoModels();
const HOUSE = demoHouse();

function model(number: string): Model {
  const found = MODELS.find((each) => each.number === number);
  if (found === undefined) throw new Error(`The demo catalogue has no ${number}.`);
  return found;
}

function priced(change: Partial<PricingInput> = {}) {
  return pricePlan({
    items: [{ model: model('D-112'), count: 2 }],
    days: 5,
    terms: HOUSE.pricing,
    waiver: 'declined',
    deliveryBand: null,
    labour: null,
    manual: [],
    discounts: NO_DISCOUNTS,
    deposit: null,
    ...change,
  });
}

describe('the price of a plan', () => {
  it('hires each piece at the cheapest mix and says how it came about', () => {
    const [line] = priced().lines;
    const best = bestRate({ rates: model('D-112').rates, days: 5 });
    expect(best.mix).toBe('1 week');
    expect(line).toMatchObject({
      kind: 'hire',
      number: 'D-112',
      quantity: 2,
      unit_minor: best.total_minor,
      net_minor: 2 * best.total_minor,
    });
    expect(line?.sentence).toBe('5 days at the cheapest mix of rates, 1 week: EUR 105.50 each, times 2.');
  });

  it('says that a minimum applies', () => {
    const dear = { ...model('D-112'), rates: { ...model('D-112').rates, minimum_days: 3 } };
    const [line] = priced({ items: [{ model: dear, count: 1 }], days: 1 }).lines;
    expect(line?.sentence).toMatch(/^1 day \(the minimum is 3 days\) at/);
    expect(line?.net_minor).toBe(3 * dear.rates.day_minor);
  });

  it('sells consumables at their price, whatever the days, and says what comes back', () => {
    const [line] = priced({ items: [{ model: model('S-303'), count: 3 }], days: 30 }).lines;
    expect(line).toMatchObject({ kind: 'sale', unit_minor: 2200, net_minor: 6600, purchase_after_days: null });
    expect(line?.sentence).toContain('credited at 85 %');
  });

  it('calls a made-to-order piece a workshop enquiry with an indicative price', () => {
    const [line] = priced({ items: [{ model: model('R-901'), count: 1 }] }).lines;
    expect(line?.kind).toBe('workshop enquiry');
    expect(line?.sentence).toContain('indicative until the workshop has confirmed');
  });

  it('takes the waiver on discounted hire alone and says what it leaves out', () => {
    const plan = priced({
      items: [
        { model: model('D-112'), count: 2 },
        { model: model('S-303'), count: 1 },
      ],
      waiver: 'taken',
      discounts: { groups: [{ group: 'hire', percent: 10, reason: 'frame agreement' }], whole: null },
    });
    const hire = 2 * 10_550;
    expect(plan.hire_minor).toBe(hire);
    expect(plan.lines.find(({ kind }) => kind === 'discount')?.net_minor).toBe(-2110);
    expect(plan.lines.find(({ kind }) => kind === 'waiver')?.net_minor).toBe(Math.round((hire - 2110) * 0.12));
    expect(plan.notes[0]).toContain('theft that was not reported within a day');
  });

  it('charges delivery and collection by band, and each started hundred kilograms beyond what is included', () => {
    const [near] = HOUSE.deliveryBands;
    if (near === undefined) throw new Error('The demo house has delivery bands.');
    const heavy = priced({ items: [{ model: model('D-359'), count: 10 }], deliveryBand: near });
    const delivery = heavy.lines.find(({ kind }) => kind === 'delivery');
    expect(delivery?.net_minor).toBe(6200 + 1400);
    expect(delivery?.sentence).toContain('1 started hundred kilograms more at EUR 14.00 each');
    expect(heavy.lines.find(({ kind }) => kind === 'collection')?.net_minor).toBe(6200 + 1400);
    const light = priced({ deliveryBand: near });
    expect(light.lines.find(({ kind }) => kind === 'delivery')?.net_minor).toBe(6200);
  });

  it('prices labour only where our people work', () => {
    const operated = priced({ labour: { hours: 6.5, minor_per_hour: toMinor(7400) } });
    expect(operated.lines.find(({ kind }) => kind === 'labour')?.net_minor).toBe(48_100);
    expect(priced().lines.some(({ kind }) => kind === 'labour')).toBe(false);
    expect(priced().notes).toContain('Dry hire: labour steers the plan and is not part of the price.');
  });

  it('adds up: net is the sum of the lines, tax is per category, the deposit is a share of the total', () => {
    const plan = priced({ waiver: 'taken', deposit: HOUSE.deposit });
    expect(plan.net_minor).toBe(plan.lines.reduce((sum, line) => sum + line.net_minor, 0));
    expect(plan.taxes.map(({ code, taxable_minor, tax_minor }) => [code, taxable_minor, tax_minor])).toEqual([
      ['S', 21_100, 4431],
      ['E', 2532, 0],
    ]);
    expect(plan.gross_minor).toBe(21_100 + 2532 + 4431);
    expect(plan.deposit_minor).toBe(Math.round(plan.gross_minor * 0.3));
  });

  it('compares hire with purchase', () => {
    const [line] = priced().lines;
    const days = line?.purchase_after_days ?? 0;
    expect(days).toBeGreaterThan(100);
    expect(bestRate({ rates: model('D-112').rates, days }).total_minor).toBeGreaterThanOrEqual(
      model('D-112').replacement_minor,
    );
  });

  it('leaves out what is asked for zero times', () => {
    expect(priced({ items: [{ model: model('D-112'), count: 0 }] }).lines).toEqual([]);
  });

  it('stops on a tax category that the house does not have', () => {
    const terms = { ...HOUSE.pricing, taxOf: { ...HOUSE.pricing.taxOf, hire: 'AE' } };
    expect(() => priced({ terms })).toThrow('The tax category AE is not among the house');
  });
});
