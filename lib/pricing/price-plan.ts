/*
 * Prices a plan: hire, workshop enquiries, sale items, lines added by hand, delivery, labour, discounts, waiver, tax and totals.
 * Invariant: every line says how it came about; the net total is the sum of the lines; tax is per category.
 * Not here: which equipment it takes (kits, fleet) and when a quote may be issued (services).
 * Read next: priced-plan.ts, best-rate.ts, tax-totals.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { type Minor, roundMinor, sumMinor, toMinor } from '#lib/money/money.ts';
import { bestRate } from './best-rate.ts';
import { deliveryLines, labourLine, waiverLine } from './charge-lines.ts';
import { type DiscountChoices, type DiscountedLines, discountLines, groupOf } from './discounts.ts';
import { listedNet, type ManualLine, manualPriced } from './manual-line.ts';
import type { GroupSum, PricedLine, PricedPlan } from './priced-plan.ts';
import { purchaseDays } from './purchase-days.ts';
import { taxTotals } from './tax-totals.ts';
import { tellAmount, tellCount } from './tell.ts';
import type { DeliveryBand, DepositTerms, LabourCharge, PricingTerms } from './terms.ts';

export interface PricingInput {
  readonly items: readonly { readonly model: Model; readonly count: number }[];
  /** Charged days (chargeable-days.ts). */
  readonly days: number;
  readonly terms: PricingTerms;
  readonly waiver: 'taken' | 'declined';
  /** Null where the customer collects and brings back. */
  readonly deliveryBand: DeliveryBand | null;
  readonly labour: LabourCharge | null;
  /** Lines added at the Desk, in their order. */
  readonly manual: readonly ManualLine[];
  readonly discounts: DiscountChoices;
  readonly deposit: DepositTerms | null;
}

export function pricePlan(input: PricingInput): PricedPlan {
  const { terms } = input;
  const goods = input.items.filter(({ count }) => count > 0).map((item) => goodsLine({ ...item, input }));
  const hire = sumMinor(
    goods.filter(({ kind }) => kind === 'hire' || kind === 'workshop enquiry').map(({ net_minor }) => net_minor),
  );
  const mass = input.items.reduce((sum, { model, count }) => sum + model.mass * count, 0);
  const charged: readonly PricedLine[] = [
    ...goods,
    ...input.manual.map((line) => manualPriced({ line, days: input.days, currency: terms.currency })),
    ...(input.deliveryBand === null ? [] : deliveryLines({ band: input.deliveryBand, mass, terms })),
    ...(input.labour === null ? [] : labourLine({ labour: input.labour, terms })),
  ];
  const discounted = discountLines({ lines: charged, choices: input.discounts, terms });
  const lines = [
    ...charged,
    ...discounted.lines,
    ...(input.waiver === 'taken' ? waiverLine({ hire: leftOfHire({ hire, discounted }), terms }) : []),
  ];
  const totals = taxTotals({ lines, categories: terms.taxCategories });
  const deposit =
    input.deposit === null ? toMinor(0) : roundMinor((totals.gross_minor * input.deposit.percentOfGross) / 100);
  return {
    currency: terms.currency,
    days: input.days,
    lines,
    hire_minor: hire,
    groups: groupSums({ input, discounted }),
    taxes: totals.taxes,
    net_minor: totals.net_minor,
    tax_minor: totals.tax_minor,
    gross_minor: totals.gross_minor,
    deposit_minor: deposit,
    notes: tellNotes(input),
  };
}

function leftOfHire({ hire, discounted }: { readonly hire: Minor; readonly discounted: DiscountedLines }): Minor {
  return toMinor(hire - (discounted.groups.find(({ group }) => group === 'hire')?.given_minor ?? 0));
}

/** A price typed below that of the house's list is given away like a discount. */
function groupSums({
  input,
  discounted,
}: {
  readonly input: PricingInput;
  readonly discounted: DiscountedLines;
}): readonly GroupSum[] {
  const { days, terms, manual } = input;
  return discounted.groups.map(({ group, before_minor, given_minor }) => {
    const mine = manual.filter(({ kind }) => groupOf(kind) === group);
    const under = mine.reduce(
      (sum, line) => sum + listedNet({ line, days }) - manualPriced({ line, days, currency: terms.currency }).net_minor,
      0,
    );
    return { group, listed_minor: toMinor(before_minor + under), given_minor: toMinor(given_minor + under) };
  });
}

interface GoodsInput {
  readonly model: Model;
  readonly count: number;
  readonly input: PricingInput;
}

function goodsLine({ model, count, input }: GoodsInput): PricedLine {
  invariant(Number.isInteger(count), `A count is a whole number, not ${count}.`);
  return model.role === 'accessory' && model.facts.saleItem
    ? saleLine({ model, count, input })
    : hireLine({ model, count, input });
}

function hireLine({ model, count, input }: GoodsInput): PricedLine {
  const { terms, days } = input;
  const best = bestRate({ rates: model.rates, days, daysPerWeek: terms.daysPerWeek });
  const minimum =
    best.charged_days > days
      ? ` (the minimum is ${tellCount({ count: best.charged_days, one: 'day', many: 'days' })})`
      : '';
  const each = tellAmount({ minor: best.total_minor, currency: terms.currency });
  const made = model.madeToOrder
    ? ' Made to order: indicative until the workshop has confirmed drawing, price and date.'
    : '';
  return {
    kind: model.madeToOrder ? 'workshop enquiry' : 'hire',
    number: model.number,
    name: model.name,
    quantity: count,
    unit_minor: best.total_minor,
    net_minor: toMinor(best.total_minor * count),
    tax: terms.taxOf.hire,
    sentence: `${tellCount({ count: days, one: 'day', many: 'days' })}${minimum} at the cheapest mix of rates, ${best.mix}: ${each} each, times ${count}.${made}`,
    purchase_after_days: model.madeToOrder
      ? null
      : purchaseDays({
          rates: model.rates,
          daysPerWeek: terms.daysPerWeek,
          replacement_minor: model.replacement_minor,
        }),
  };
}

function saleLine({ model, count, input }: GoodsInput): PricedLine {
  const { terms } = input;
  const each = tellAmount({ minor: model.replacement_minor, currency: terms.currency });
  return {
    kind: 'sale',
    number: model.number,
    name: model.name,
    quantity: count,
    unit_minor: model.replacement_minor,
    net_minor: toMinor(model.replacement_minor * count),
    tax: terms.taxOf.sale,
    sentence: `Sold, not hired: ${each} each, times ${count}. Unused ones that come back are credited at ${terms.unusedReturnCreditPercent} %.`,
    purchase_after_days: null,
  };
}

function tellNotes({ waiver, terms, deliveryBand, labour }: PricingInput): readonly string[] {
  return [
    waiver === 'taken'
      ? `The damage waiver is no insurance. It leaves out ${terms.waiver.leavesOut.join('; ')}.`
      : 'No damage waiver is taken: loss and damage are charged at cost, up to the replacement value.',
    deliveryBand === null
      ? 'The customer collects and brings back.'
      : `Delivery and collection are priced for the band ${deliveryBand.name}.`,
    labour === null
      ? 'Dry hire: labour steers the plan and is not part of the price.'
      : 'Operated hire: the hours of our people are priced as planned and charged as worked.',
  ];
}
