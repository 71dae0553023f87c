/*
 * The currency in which an enquiry is quoted: the customer's where the house keeps a rate for it on the first day of hire, else the house's own.
 * Invariant: rates and charges are turned over one by one before anything is added up; the price says at which rate.
 * Not here: pricing (price-outcome.ts), charging a return (lib/services/yard/back), and plans, which are compared in the house's own currency.
 * Read next: ../../money/exchange.ts, price-outcome.ts.
 */
import type { HouseFacts } from '#lib/contracts/house.ts';
import type { PriceChoices } from '#lib/contracts/price-choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Exchange, exchanged, exchangedBack } from '#lib/money/exchange.ts';
import type { Minor } from '#lib/money/money.ts';
import { type ReturnRates, SOILS } from '#lib/pricing/return-facts.ts';
import type { PapersInput } from './papers-of.ts';

/** Null where the house's own currency is quoted: nothing else is agreed, or no rate is kept. */
export function quotedExchange(house: HouseFacts, asked: string | null): Exchange | null {
  return asked === null ? null : (exchangeTo(house, asked) ?? null);
}

function exchangeTo({ exchange = [], pricing }: HouseFacts, currency: string): Exchange | undefined {
  const row = exchange.find((one) => one.currency === currency);
  return row === undefined || currency === pricing.currency
    ? undefined
    : { from: pricing.currency, to: currency, rate: row.rate };
}

/** The house as it prices in the other currency. */
export function houseTurnedOver(house: HouseFacts, exchange: Exchange): HouseFacts {
  const turned = (minor: Minor): Minor => exchanged(minor, exchange);
  return {
    ...house,
    pricing: { ...house.pricing, currency: exchange.to },
    deliveryBands: house.deliveryBands.map((band) => ({
      ...band,
      delivery_minor: turned(band.delivery_minor),
      collection_minor: turned(band.collection_minor),
      per_extra_100_kg_minor: turned(band.per_extra_100_kg_minor),
    })),
    labourMinorPerHour: turned(house.labourMinorPerHour),
    priceList: house.priceList.map((item) => ({ ...item, unit_minor: turned(item.unit_minor) })),
    ...(house.returns === undefined ? {} : { returns: returnsTurnedOver(house.returns, exchange) }),
  };
}

/** What the house asks after a return, in the other currency. */
export function returnsTurnedOver(returns: ReturnRates, exchange: Exchange): ReturnRates {
  const { workshop_minor_per_hour: hour, cleaning_minor: cleaning } = returns;
  const priced = SOILS.flatMap((soil) => {
    const minor = cleaning[soil];
    return minor === undefined ? [] : [[soil, exchanged(minor, exchange)] as const];
  });
  return {
    workshop_minor_per_hour: hour === null ? null : exchanged(hour, exchange),
    cleaning_minor: Object.fromEntries(priced),
  };
}

/** What was frozen with a quote, as it is charged: house and rates in the currency that was quoted, at the rate that was frozen. */
export function chargedAsQuoted(papers: PapersInput): PapersInput {
  const { exchange, house, models } = papers;
  if (exchange === undefined) return papers;
  return { ...papers, house: houseTurnedOver(house, exchange), models: modelsTurnedOver(models, exchange) };
}

export function modelsTurnedOver(models: readonly Model[], exchange: Exchange): readonly Model[] {
  const turned = (minor: Minor): Minor => exchanged(minor, exchange);
  return models.map((model) => ({
    ...model,
    replacement_minor: turned(model.replacement_minor),
    rates: {
      ...model.rates,
      day_minor: turned(model.rates.day_minor),
      week_minor: turned(model.rates.week_minor),
      four_weeks_minor: turned(model.rates.four_weeks_minor),
    },
  }));
}

/** Amounts that were typed while another currency was quoted are turned over with the rest. */
export function choicesTurnedOver(
  choices: PriceChoices,
  { house, to }: { readonly house: HouseFacts; readonly to: string },
): Result<PriceChoices> {
  const own = house.pricing.currency;
  const typed = choices.currency ?? own;
  if (typed === to) return ok({ ...choices, currency: to === own ? null : to });
  const back = typed === own ? null : exchangeTo(house, typed);
  const forth = to === own ? null : exchangeTo(house, to);
  if (back === undefined || forth === undefined) {
    return failed({
      code: 'no-exchange-rate',
      sentence: `Lines of this price were typed in ${typed}, and the house keeps no exchange rate between ${typed} and ${to}: put one on under House.`,
    });
  }
  const turned = (minor: Minor): Minor => {
    const inOwn = back === null ? minor : exchangedBack(minor, back);
    return forth === null ? inOwn : exchanged(inOwn, forth);
  };
  const lines = choices.lines.map((line) => ({
    ...line,
    unit_minor: turned(line.unit_minor),
    rehired: line.rehired === null ? null : { ...line.rehired, cost_minor: turned(line.rehired.cost_minor) },
  }));
  return ok({ ...choices, lines, currency: to === own ? null : to });
}
