/*
 * The lines that the price of a plan must have, worked out a second time from kits, models and terms.
 * Invariant: each amount is in whole minor units, rounded once on its own line.
 * Not here: comparing them with the price (check-price.ts).
 * Read next: expected-allowances.ts, rental-mix.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { allowances } from './expected-allowances.ts';
import type { ExpectedLine } from './expected-line.ts';
import { chargedDays, type PriceFacts, type TypedLine } from './price-facts.ts';
import { cheapestHire, daysToPrice } from './rental-mix.ts';
import { roundHalfAway } from './round-half-away.ts';

/** Sums of masses in another order differ by less than this; it starts no hundred kilograms. [kg] */
const GRAM_DUST = 1e-7;

export function expectedLines(facts: PriceFacts): readonly ExpectedLine[] {
  const carried = carriedBy(facts);
  const charged: readonly ExpectedLine[] = [
    ...carried.map(({ model, count }) => goodsLine({ facts, model, count })),
    ...facts.manual.map((line) => typedLine({ line, days: chargedDays(facts) })),
    ...transport(facts, carried),
    ...labour(facts),
  ];
  const given = allowances({ charged, facts });
  const waived = given.of('hire').before - given.of('hire').given;
  const waiver = facts.waiver === 'taken' ? roundHalfAway(waived * facts.terms.waiver.percent, 100) : 0;
  return [
    ...charged,
    ...given.lines.map(({ net, tax }) => ({
      kind: 'discount',
      number: '',
      quantity: 1,
      unit: net,
      net,
      tax,
      purchaseAfterDays: null,
    })),
    ...oneOff({ kind: 'waiver', net: waiver, tax: facts.terms.taxOf.waiver }),
  ];
}

/** Quantity to the thousandth, once or on every charged day. */
function typedLine({ line, days }: { readonly line: TypedLine; readonly days: number }): ExpectedLine {
  const counted = Math.round(line.quantity * 1000) * (line.per === 'day' ? days : 1);
  const isTimeless = ['piece', 'set', 'person', 'lump sum'].includes(line.unit);
  return {
    kind: line.kind,
    number: '',
    quantity: counted / 1000,
    counted: line.per === 'day' && isTimeless ? 'day' : line.unit,
    unit: line.unit_minor,
    net: roundHalfAway(counted * line.unit_minor, 1000),
    tax: line.tax,
    purchaseAfterDays: null,
  };
}

interface Carried {
  readonly model: Model;
  readonly count: number;
}

/** Every piece of every kit; what is in no catalogue has no price and is missed among the lines. */
function carriedBy({ kits, models }: PriceFacts): readonly Carried[] {
  const counts = new Map<string, number>();
  for (const { items } of kits) {
    for (const { item, count } of items) counts.set(item, (counts.get(item) ?? 0) + count);
  }
  return [...counts].flatMap(([number, count]) => {
    const model = models.find((one) => one.number === number);
    return model === undefined || count === 0 ? [] : [{ model, count }];
  });
}

function goodsLine({ facts, model, count }: Carried & { readonly facts: PriceFacts }): ExpectedLine {
  const { taxOf, daysPerWeek } = facts.terms;
  const { number, rates, replacement_minor: price } = model;
  const line = { number, quantity: count };
  if (model.role === 'accessory' && model.facts.saleItem) {
    return { ...line, kind: 'sale', unit: price, net: price * count, tax: taxOf.sale, purchaseAfterDays: null };
  }
  const unit = cheapestHire({ rates, days: chargedDays(facts), daysPerWeek });
  return {
    ...line,
    kind: model.madeToOrder ? 'workshop enquiry' : 'hire',
    unit,
    net: unit * count,
    tax: taxOf.hire,
    purchaseAfterDays: model.madeToOrder ? null : daysToPrice({ rates, daysPerWeek, price }),
  };
}

/** A line that comes to nothing is not written. */
function oneOff(at: { readonly kind: string; readonly net: number; readonly tax: string }): readonly ExpectedLine[] {
  return at.net === 0 ? [] : [{ ...at, number: '', quantity: 1, unit: at.net, purchaseAfterDays: null }];
}

/** The band's flat amount each way, and each started hundred kilograms above what is included. */
function transport({ band, terms }: PriceFacts, carried: readonly Carried[]): readonly ExpectedLine[] {
  if (band === null) return [];
  const mass = carried.reduce((sum, { model, count }) => sum + model.mass * count, 0);
  let started = 0;
  while (band.included_kg + 100 * started < mass - GRAM_DUST) started += 1;
  return (['delivery', 'collection'] as const).map((kind) => {
    const amount = band[`${kind}_minor`] + started * band.per_extra_100_kg_minor;
    return {
      kind,
      number: '',
      quantity: 1,
      unit: amount,
      net: amount,
      tax: terms.taxOf.delivery,
      purchaseAfterDays: null,
    };
  });
}

function labour({ operated_minor_per_hour: rate, kits, terms }: PriceFacts): readonly ExpectedLine[] {
  if (rate === null) return [];
  const seconds = kits.reduce((sum, kit) => sum + kit.time_s, 0);
  const net = roundHalfAway(seconds * rate, 3600);
  if (net === 0) return [];
  return [
    {
      kind: 'labour',
      number: '',
      quantity: seconds / 3600,
      unit: rate,
      net,
      tax: terms.taxOf.labour,
      purchaseAfterDays: null,
    },
  ];
}
