/*
 * Prices a plan by the house's terms: what the crews carry, the days charged, waiver, delivery, labour where operated, tax.
 * Invariant: labour is priced only where our own people work; a price that the independent check does not find too is an incident, never shown.
 * Not here: whether a discount may be quoted (discount-of.ts).
 * Read next: ../../pricing/price-plan.ts.
 */
import { checkPrice } from '#lib/checking/check-price.ts';
import type { HouseFacts } from '#lib/contracts/house.ts';
import { NO_CHOICES, type PriceChoices } from '#lib/contracts/price-choices.ts';
import { dateText } from '#lib/documents/words/print-values.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Model } from '#lib/equipment/model.ts';
import { type IsoDate, rangeOfDays } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { Exchange } from '#lib/money/exchange.ts';
import type { Minor } from '#lib/money/money.ts';
import type { PlanOutcome } from '#lib/planning/worked-out.ts';
import { chargeableDays } from '#lib/pricing/chargeable-days.ts';
import { pricePlan } from '#lib/pricing/price-plan.ts';
import type { PricedPlan } from '#lib/pricing/priced-plan.ts';
import type { CustomerTerms } from '#lib/services/customers/customer-facts.ts';
import { lackingSentences } from '#lib/services/plans/crew-numbers.ts';
import { houseTurnedOver, modelsTurnedOver } from './quote-currency.ts';

const BAND_ASSUMED = "No delivery band is agreed with this customer yet: the house's first band is assumed.";

/** The date that rules is the first day of hire, not the day of the quote: a hire has one set of rates from its first day to its last. */
function ratesRule(startsOn: IsoDate): string {
  return `Rates and charges are those that hold on ${dateText(startsOn)}, the first day of hire.`;
}

interface Pricing {
  readonly house: HouseFacts;
  readonly models: readonly Model[];
  readonly site: Site;
  readonly outcome: PlanOutcome;
  /** Without a band agreed the house's first is taken, and the price says so. */
  readonly agreed: CustomerTerms;
  /** What the Desk added and gave away; a plan without either where it is absent. */
  readonly choices?: PriceChoices;
  /** Where another currency than the house's own is quoted; the choices are in that one. */
  readonly exchange?: Exchange | null;
}

export function priceOutcome(pricing: Pricing): PricedPlan {
  const { exchange = null } = pricing;
  if (exchange === null) return priced(pricing);
  const price = priced({
    ...pricing,
    house: houseTurnedOver(pricing.house, exchange),
    models: modelsTurnedOver(pricing.models, exchange),
  });
  return { ...price, notes: [...price.notes, rateRules(exchange, pricing.site.startsOn)] };
}

function rateRules(...[{ from, to, rate }, startsOn]: readonly [Exchange, IsoDate]): string {
  return `Prices are in ${to}, worked from our rates in ${from} at the rate that holds on ${dateText(startsOn)}: 1 ${from} is ${rate} ${to}.`;
}

function priced({ house, models, site, outcome, agreed, choices = NO_CHOICES }: Pricing): PricedPlan {
  const counts = new Map<string, number>();
  for (const { item, count } of outcome.kits.flatMap((kit) => kit.items))
    counts.set(item, (counts.get(item) ?? 0) + count);
  const window = rangeOfDays(site.startsOn, site.days);
  const hours = outcome.kits.reduce((sum, kit) => sum + kit.time_s, 0) / 3600;
  const agreedBand = house.deliveryBands.find(({ id }) => id === agreed.deliveryBand);
  const deliveryBand = agreedBand ?? house.deliveryBands[0] ?? null;
  const deposit = agreed.account === 'new' ? house.deposit : null;
  const { waiver, discounts } = choices;
  const manual = choices.lines.map(({ list_item, ...line }) => ({ ...line, list_minor: listPrice(house, list_item) }));
  const price = pricePlan({
    items: models.flatMap((model) => {
      const count = counts.get(model.number);
      return count === undefined ? [] : [{ model, count }];
    }),
    days: chargeableDays({ window, rule: house.charging, transitDays: 0 }).days,
    terms: house.pricing,
    waiver,
    deliveryBand,
    labour: site.operated ? { hours, minor_per_hour: house.labourMinorPerHour } : null,
    manual,
    discounts,
    deposit,
  });
  const wrong = checkPrice({
    models,
    kits: outcome.kits,
    startsOn: site.startsOn,
    days: site.days,
    charging: house.charging,
    terms: house.pricing,
    waiver,
    band: deliveryBand,
    operated_minor_per_hour: site.operated ? house.labourMinorPerHour : null,
    manual,
    discounts,
    depositPercent: deposit?.percentOfGross ?? null,
    priced: price,
  });
  invariant(
    wrong.length === 0,
    `The independent check does not agree with the price: ${wrong.map(({ sentence }) => sentence).join(' ')}`,
  );
  const notes = [
    ratesRule(site.startsOn),
    ...lackingSentences({ outcome, models }),
    ...(agreedBand === undefined ? [BAND_ASSUMED] : []),
  ];
  return { ...price, notes: [...price.notes, ...notes] };
}

/** An item that is no longer on the list leaves the line as it was typed. */
function listPrice({ priceList }: HouseFacts, item: string | null): Minor | null {
  return priceList.find(({ id }) => id === item)?.unit_minor ?? null;
}
