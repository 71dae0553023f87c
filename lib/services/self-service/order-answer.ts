/*
 * What an order comes to, as its owner may see it: kits, price, what each valve gets and why some go to the Desk.
 * Invariant: holds no stock count, no serial number, no cost price and nothing of other customers; a firm answer serves every valve.
 * Not here: planning (work-order.ts) and the words (lib/wording).
 * Read next: valve-answer.ts, availability.ts.
 */
import type { Preference } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { currencyDecimals } from '#lib/money/currency.ts';
import type { PlanOutcome } from '#lib/planning/worked-out.ts';
import type { PricedKind } from '#lib/pricing/priced-plan.ts';
import { type HandOver, handOverOfValue } from '#lib/questions/hand-over.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { type OptionPrice, optionPrice } from '#lib/services/quotes/option-price.ts';
import { OWN_SLOT } from '#lib/services/quotes/option-record.ts';
import { priceOutcome } from '#lib/services/quotes/price-outcome.ts';
import type { Language } from '#lib/wording/language.ts';
import { type Availability, availabilityOf } from './availability.ts';
import type { OpenOrder } from './open-link.ts';
import { selfServiceFacts } from './self-facts.ts';
import { type NamedPiece, namedPiece, type ValveResult, valveResults } from './valve-answer.ts';

export interface AnswerPrice {
  readonly currency: string;
  readonly days: number;
  readonly lines: readonly {
    readonly kind: PricedKind;
    readonly name: string;
    readonly quantity: number;
    readonly net_minor: number;
  }[];
  readonly net_minor: number;
  readonly tax_minor: number;
  readonly gross_minor: number;
  readonly deposit_minor: number;
}

export interface OtherWay {
  readonly preference: Preference;
  readonly gross_minor: number;
  readonly pieces: number;
  readonly mass_kg: number;
  readonly hours: number;
}

export interface OrderAnswer {
  /** Every valve is served and nothing has to be looked at: a quote may be made of it. */
  readonly firm: boolean;
  /** Reasons that concern the whole order; those of valves stand with them. */
  readonly handOver: readonly HandOver[];
  readonly valves: readonly ValveResult[];
  readonly price: AnswerPrice;
  readonly kits: readonly {
    readonly pieces: readonly NamedPiece[];
    readonly mass_kg: number;
    readonly hours: number;
  }[];
  readonly chosen: Preference;
  readonly ways: readonly OtherWay[];
  readonly availability: Availability;
}

export function orderAnswer(
  context: Context,
  opened: OpenOrder,
  language: Language = 'en',
): Result<OrderAnswer | null> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const { desk, order } = opened;
  const option = optionPrice(desk, { enquiryId: order.enquiry_id, slot: OWN_SLOT });
  if (!option.ok) return option;
  const { planned, state } = option.value;
  if (planned === null || state.kind !== 'ready' || !state.current) return ok(null);
  const { outcome, price } = planned;
  const availability = availabilityOf(desk, { option: option.value, outcome });
  const handOver = [
    ...handOverOfValue({
      net_minor: price.net_minor,
      minorPerUnit: 10 ** currencyDecimals(price.currency),
      limit: selfServiceFacts(context).value_limit,
    }),
    ...(availability.kind === 'free' ? [] : [{ code: 'not-in-these-days', facts: {} } as const]),
  ];
  const valves = valveResults(context, { opened, option: option.value, outcome, language });
  return ok({
    firm: handOver.length === 0 && valves.every(({ handOver: reasons }) => reasons.length === 0),
    handOver,
    valves,
    price: priceView(price),
    kits: kitViews(outcome, option.value.input.models),
    chosen: outcome.preference,
    ways: otherWays(desk, option.value),
    availability,
  });
}

function priceView(price: NonNullable<OptionPrice['planned']>['price']): AnswerPrice {
  const { currency, days, net_minor, tax_minor, gross_minor, deposit_minor } = price;
  const lines = price.lines.map((line) => ({
    kind: line.kind,
    name: line.name,
    quantity: line.quantity,
    net_minor: line.net_minor,
  }));
  return { currency, days, lines, net_minor, tax_minor, gross_minor, deposit_minor };
}

function kitViews({ kits }: PlanOutcome, models: readonly Model[]): OrderAnswer['kits'] {
  const byNumber = new Map(models.map((model) => [model.number, model]));
  return kits.map(({ items, mass_kg, time_s }) => ({
    mass_kg,
    hours: time_s / 3600,
    pieces: items.flatMap(({ item, count }) => {
      const model = byNumber.get(item);
      return model === undefined ? [] : [namedPiece(model, count)];
    }),
  }));
}

/** The same valves with fewer pieces, in less time, or surer at the first visit; ways that come to the same are told once. */
function otherWays(desk: Context, { planned, enquiry, input, option }: OptionPrice): readonly OtherWay[] {
  if (planned === null) return [];
  const house = houseFacts(desk, enquiry.site.startsOn);
  const ways = planned.worked.plans.map(
    (outcome): OtherWay => ({
      preference: outcome.preference,
      gross_minor: priceOutcome({
        house,
        models: input.models,
        site: enquiry.site,
        outcome,
        agreed: enquiry.customer.terms,
        choices: option.choices,
      }).gross_minor,
      pieces: outcome.kits.reduce((sum, { pieces }) => sum + pieces, 0),
      mass_kg: outcome.kits.reduce((sum, { mass_kg }) => sum + mass_kg, 0),
      hours: outcome.kits.reduce((sum, { time_s }) => sum + time_s, 0) / 3600,
    }),
  );
  const isSame = (a: OtherWay, b: OtherWay): boolean =>
    a.gross_minor === b.gross_minor && a.pieces === b.pieces && Math.round(a.hours * 60) === Math.round(b.hours * 60);
  return ways.filter((way, index) => ways.findIndex((other) => isSame(other, way)) === index);
}
