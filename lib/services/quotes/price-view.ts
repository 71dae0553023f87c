/*
 * The price of an enquiry as its screen shows it: the options side by side, and one of them in full.
 * Invariant: reads only; every figure is the one that a quote issued now would print.
 * Not here: changing it (change-price.ts) and issuing (issue-quote.ts).
 * Read next: option-price.ts, discount-of.ts.
 */
import type { PriceChoices } from '#lib/contracts/price-choices.ts';
import type { PriceList } from '#lib/contracts/price-list.ts';
import { dateText, windowText } from '#lib/documents/words/print-values.ts';
import type { QuoteChanges } from '#lib/documents/words/quote-changes.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Preference } from '#lib/equipment/choices.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { PaymentTerms } from '#lib/pricing/payment-terms.ts';
import type { PricedPlan } from '#lib/pricing/priced-plan.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import type { CustomerFacts } from '#lib/services/customers/customer-facts.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { fittingNothing } from '#lib/services/plans/fitting-nothing.ts';
import type { PlanState } from '#lib/services/plans/plan-enquiry.ts';
import { type DiscountOf, discountOf, mayQuote } from './discount-of.ts';
import { gatherPapers } from './enquiry-papers.ts';
import { type OptionPrice, optionPrice } from './option-price.ts';
import { readOptions } from './option-record.ts';
import { houseTurnedOver } from './quote-currency.ts';
import { revisionChanges } from './revision-changes.ts';

export interface OptionSummary {
  readonly slot: number;
  readonly name: string;
  readonly state: PlanState;
  readonly site: Pick<Site, 'crews' | 'days' | 'startsOn' | 'sourcesAllowed'>;
  readonly preference: Preference;
  /** Null until there is a plan. */
  readonly figures: {
    readonly served: number;
    readonly asked: number;
    readonly hours: number;
    readonly mass_kg: number;
    readonly gross_minor: number;
  } | null;
  /** Why it cannot be quoted yet; empty where it can. */
  readonly hindrance: string;
}

export interface ShownOption {
  readonly slot: number;
  readonly version: number;
  readonly choices: PriceChoices;
  readonly price: PricedPlan | null;
  readonly payment: PaymentTerms | null;
  readonly discount: DiscountOf | null;
  /** A currency that cannot be quoted, re-hired pieces whose days do not cover the hire; in words. */
  readonly warnings: readonly string[];
}

export interface PriceView {
  readonly currency: string;
  readonly limit: number;
  /** The discount that the customer's terms promise; null where they promise none. */
  readonly agreed: { readonly customer: string; readonly percent: number } | null;
  readonly priceList: PriceList;
  readonly taxes: readonly { readonly code: string; readonly name: string }[];
  readonly taxOf: Readonly<Record<'hire' | 'sale' | 'delivery' | 'labour', string>>;
  /** Power sources that the site allows. */
  readonly sources: Site['sourcesAllowed'];
  readonly me: string;
  readonly options: readonly OptionSummary[];
  readonly shown: ShownOption;
  /** Against the newest issued revision; null where there is none, or nothing to issue. */
  readonly changes: QuoteChanges | null;
}

export function readPriceView(
  context: Context,
  input: { readonly enquiryId: number; readonly slot: number },
): Result<PriceView> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const priced: OptionPrice[] = [];
  for (const { slot } of readOptions(context, input.enquiryId)) {
    const option = optionPrice(context, { enquiryId: input.enquiryId, slot });
    if (!option.ok) return option;
    priced.push(option.value);
  }
  const [own] = priced;
  const shown = priced.find(({ option }) => option.slot === input.slot) ?? own;
  if (own === undefined || shown === undefined)
    return failed({ code: 'no-such-option', sentence: 'That option is not there; load the page again.' });
  const house = houseFacts(context, shown.enquiry.site.startsOn);
  return ok({
    currency: shown.exchange?.to ?? house.pricing.currency,
    limit: house.terms.discountLimitPercent,
    agreed: agreedWith(own.enquiry.customer),
    priceList: (shown.exchange === null ? house : houseTurnedOver(house, shown.exchange)).priceList,
    taxes: house.pricing.taxCategories,
    taxOf: house.pricing.taxOf,
    sources: own.enquiry.site.sourcesAllowed,
    me: actingPerson(context).id,
    options: priced.map((option) => summaryOf(context, { enquiryId: input.enquiryId, option })),
    shown: shownOf(context, { enquiryId: input.enquiryId, option: shown }),
    changes: changesOf(context, input.enquiryId),
  });
}

function agreedWith({ name, terms }: CustomerFacts): PriceView['agreed'] {
  const percent = terms.discountPercent ?? 0;
  return percent > 0 ? { customer: name, percent } : null;
}

interface OfOption {
  readonly enquiryId: number;
  readonly option: OptionPrice;
}

function summaryOf(context: Context, { enquiryId, option }: OfOption): OptionSummary {
  const { planned, state, enquiry } = option;
  const { slot, choices } = option.option;
  const may = planned === null ? null : mayQuote(discountOf(context, { enquiryId, slot, price: planned.price }));
  const isCurrent = state.kind === 'ready' && state.current;
  return {
    slot,
    name: choices.name,
    state,
    site: enquiry.site,
    preference: enquiry.preference,
    figures:
      planned === null
        ? null
        : {
            served: planned.outcome.fleet.served,
            asked: planned.outcome.fleet.asked + fittingNothing({ worked: planned.worked, lines: option.input.lines }),
            hours: planned.outcome.kits.reduce((sum, kit) => sum + kit.time_s, 0) / 3600,
            mass_kg: planned.outcome.kits.reduce((sum, kit) => sum + kit.mass_kg, 0),
            gross_minor: planned.price.gross_minor,
          },
    hindrance: isCurrent ? (may === null || may.ok ? '' : may.reason.sentence) : 'It has no plan that is up to date.',
  };
}

function shownOf(context: Context, { enquiryId, option }: OfOption): ShownOption {
  const { planned } = option;
  const { slot, version, choices } = option.option;
  return {
    slot,
    version,
    choices,
    price: planned?.price ?? null,
    payment: planned?.payment ?? null,
    discount: planned === null ? null : discountOf(context, { enquiryId, slot, price: planned.price }),
    warnings: [...rateWarnings(context, option), ...rehireWarnings(option)],
  };
}

function rateWarnings(context: Context, { enquiry, exchange }: OptionPrice): readonly string[] {
  const { name, currency } = enquiry.customer;
  const { startsOn } = enquiry.site;
  const own = houseFacts(context, startsOn).pricing.currency;
  if (currency === null || currency === own || exchange !== null) return [];
  return [
    `${name} asks for prices in ${currency}. The house keeps no exchange rate for it on ${dateText(startsOn)}, so this is in ${own}: put a rate on under House.`,
  ];
}

/** The hire window of the option against the days for which another house lends the piece. */
function rehireWarnings({ enquiry, option }: OptionPrice): readonly string[] {
  const window = rangeOfDays(enquiry.site.startsOn, enquiry.site.days);
  return option.choices.lines.flatMap(({ text, rehired }) => {
    if (rehired === null) return [];
    if (rehired.starts_on <= window.starts_on && rehired.ends_before >= window.ends_before) return [];
    const days = windowText(rehired);
    return [`“${text}” from ${rehired.house} is there ${days}, which does not cover the hire, ${windowText(window)}.`];
  });
}

function changesOf(context: Context, enquiryId: number): QuoteChanges | null {
  const papers = gatherPapers(context, { enquiryId, number: '' });
  if (!papers.ok) return null;
  return revisionChanges(context.database.db, { enquiryId, papers: papers.value }) ?? null;
}
