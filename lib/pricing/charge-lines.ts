/*
 * The lines of a price that are not goods: waiver, delivery and collection, labour.
 * Invariant: each amount is rounded once, on its own line.
 * Not here: hire and sale of goods (price-plan.ts), discounts (discounts.ts).
 * Read next: price-plan.ts.
 */
import { type Minor, roundMinor, toMinor } from '#lib/money/money.ts';
import type { PricedLine } from './priced-plan.ts';
import { tellAmount, tellCount } from './tell.ts';
import type { DeliveryBand, LabourCharge, PricingTerms } from './terms.ts';

/** What a sum of masses in binary may lie above a whole hundred without starting another. */
const BINARY_DUST = 1e-9;

const ONE_OFF = { number: '', quantity: 1, purchase_after_days: null } as const;

export function waiverLine({
  hire,
  terms,
}: {
  readonly hire: Minor;
  readonly terms: PricingTerms;
}): readonly PricedLine[] {
  const amount = roundMinor((hire * terms.waiver.percent) / 100);
  if (amount === 0) return [];
  const basis = tellAmount({ minor: hire, currency: terms.currency });
  return [
    {
      ...ONE_OFF,
      kind: 'waiver',
      name: 'Damage waiver',
      unit_minor: amount,
      net_minor: amount,
      tax: terms.taxOf.waiver,
      sentence: `${terms.waiver.percent} % of the hire of ${basis}; sale items, delivery and labour are left out. It does not cover ${terms.waiver.leavesOut.join('; ')}.`,
    },
  ];
}

export function deliveryLines({
  band,
  mass,
  terms,
}: {
  readonly band: DeliveryBand;
  readonly mass: number;
  readonly terms: PricingTerms;
}): readonly PricedLine[] {
  const extra = Math.ceil(Math.max(0, mass - band.included_kg) / 100 - BINARY_DUST);
  const line = (way: {
    readonly kind: 'delivery' | 'collection';
    readonly name: string;
    readonly flat: Minor;
  }): PricedLine => {
    const amount = toMinor(way.flat + extra * band.per_extra_100_kg_minor);
    return {
      ...ONE_OFF,
      kind: way.kind,
      name: way.name,
      unit_minor: amount,
      net_minor: amount,
      tax: terms.taxOf.delivery,
      sentence: tellWay({ band, flat: way.flat, mass, extra, terms }),
    };
  };
  return [
    line({ kind: 'delivery', name: `Delivery, ${band.name}`, flat: band.delivery_minor }),
    line({ kind: 'collection', name: `Collection, ${band.name}`, flat: band.collection_minor }),
  ];
}

interface Way {
  readonly band: DeliveryBand;
  readonly flat: Minor;
  readonly mass: number;
  readonly extra: number;
  readonly terms: PricingTerms;
}

function tellWay({ band, flat, mass, extra, terms }: Way): string {
  const base = `Band ${band.name}: ${tellAmount({ minor: flat, currency: terms.currency })} with ${band.included_kg} kg included; the equipment weighs ${Math.ceil(mass)} kg without cases`;
  if (extra === 0) return `${base}.`;
  const more = tellCount({ count: extra, one: 'started hundred kilograms', many: 'started hundreds of kilograms' });
  return `${base}, so ${more} more at ${tellAmount({ minor: band.per_extra_100_kg_minor, currency: terms.currency })} each.`;
}

export function labourLine({
  labour,
  terms,
}: {
  readonly labour: LabourCharge;
  readonly terms: PricingTerms;
}): readonly PricedLine[] {
  const amount = roundMinor(labour.hours * labour.minor_per_hour);
  if (amount === 0) return [];
  const hourly = tellAmount({ minor: labour.minor_per_hour, currency: terms.currency });
  return [
    {
      ...ONE_OFF,
      kind: 'labour',
      name: 'Our operators',
      quantity: labour.hours,
      unit_minor: labour.minor_per_hour,
      net_minor: amount,
      tax: terms.taxOf.labour,
      sentence: `${labour.hours} crew hours as planned, at ${hourly} an hour.`,
    },
  ];
}
