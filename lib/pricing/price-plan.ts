/*
 * Prices a plan: hire, workshop enquiries, sale items, waiver, delivery, labour, discount, tax and totals.
 * Invariant: every line says how it came about; the net total is the sum of the lines; tax is per category.
 * Not here: which equipment it takes (kits, fleet) and when a quote may be issued (services).
 * Read next: priced-plan.ts, best-rate.ts, tax-totals.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { roundMinor, sumMinor, toMinor } from '#lib/money/money.ts';
import { bestRate } from './best-rate.ts';
import { deliveryLines, discountLine, labourLine, waiverLine } from './charge-lines.ts';
import type { PricedLine, PricedPlan } from './priced-plan.ts';
import { purchaseDays } from './purchase-days.ts';
import { taxTotals } from './tax-totals.ts';
import { tellAmount, tellCount } from './tell.ts';
import type { DeliveryBand, DepositTerms, Discount, LabourCharge, PricingTerms } from './terms.ts';

export interface PricingInput {
  readonly items: readonly { readonly model: Model; readonly count: number }[];
  /** Charged days (chargeable-days.ts). */
  readonly days: number;
  readonly terms: PricingTerms;
  readonly waiver: 'taken' | 'declined';
  /** Null where the customer collects and brings back. */
  readonly deliveryBand: DeliveryBand | null;
  readonly labour: LabourCharge | null;
  readonly discount: Discount | null;
  readonly deposit: DepositTerms | null;
}

export function pricePlan(input: PricingInput): PricedPlan {
  const { terms } = input;
  const goods = input.items.filter(({ count }) => count > 0).map((item) => goodsLine({ ...item, input }));
  const hire = sumMinor(
    goods.filter(({ kind }) => kind === 'hire' || kind === 'workshop enquiry').map(({ net_minor }) => net_minor),
  );
  const discount = input.discount === null ? [] : discountLine({ discount: input.discount, hire, terms });
  const discounted = sumMinor([hire, ...discount.map(({ net_minor }) => net_minor)]);
  const mass = input.items.reduce((sum, { model, count }) => sum + model.mass * count, 0);
  const lines: readonly PricedLine[] = [
    ...goods,
    ...discount,
    ...(input.waiver === 'taken' ? waiverLine({ hire: discounted, terms }) : []),
    ...(input.deliveryBand === null ? [] : deliveryLines({ band: input.deliveryBand, mass, terms })),
    ...(input.labour === null ? [] : labourLine({ labour: input.labour, terms })),
  ];
  const totals = taxTotals({ lines, categories: terms.taxCategories });
  const deposit =
    input.deposit === null ? toMinor(0) : roundMinor((totals.gross_minor * input.deposit.percentOfGross) / 100);
  return {
    currency: terms.currency,
    days: input.days,
    lines,
    hire_minor: hire,
    taxes: totals.taxes,
    net_minor: totals.net_minor,
    tax_minor: totals.tax_minor,
    gross_minor: totals.gross_minor,
    deposit_minor: deposit,
    notes: tellNotes(input),
  };
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

function tellNotes({ waiver, terms, deliveryBand, labour, deposit }: PricingInput): readonly string[] {
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
    ...(deposit === null
      ? []
      : [`A deposit of ${deposit.percentOfGross} % of the total is due before despatch: ${deposit.reason}.`]),
  ];
}
