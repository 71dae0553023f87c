/*
 * The hire house as its file holds it: address, currency, taxes, terms, delivery bands, rules, and figures that steer plans.
 * Invariant: every tax category that is used exists, and one that charges nothing for a reason says the reason.
 * Not here: rates (they belong to models) and what the terms lead to (lib/pricing).
 * Read next: ../pricing/terms.ts, ../../seeds/house.json.
 */
import { z } from 'zod';
import { HOUSE_RULE_KINDS, type HouseRule } from '#lib/duty/site.ts';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { isKnownCurrency } from '#lib/money/currency.ts';
import { RATE_STEPS } from '#lib/money/exchange.ts';
import { type Minor, toMinor } from '#lib/money/money.ts';
import type { ReturnRates } from '#lib/pricing/return-facts.ts';
import { type Kilograms, kilograms } from '#lib/units/quantity.ts';
import { wrongRuleValue } from './house-rule-values.ts';
import { type PriceList, priceListSchema } from './price-list.ts';
import { type SelfServiceFacts, selfServiceFactsSchema } from './self-service-facts.ts';

const text = z.string().trim().min(1);
const percent = z.number().min(0).max(100);
const minor = z.int().nonnegative().transform(toMinor);

const taxCategorySchema = z
  .strictObject({ code: z.enum(['S', 'Z', 'E', 'AE', 'O']), name: text, percent, reason: text.optional() })
  .refine((category) => !['E', 'AE', 'O'].includes(category.code) || category.reason !== undefined, {
    path: ['reason'],
    message: 'is missing: EN 16931 asks for it where no tax is charged',
  });

const termsSchema = z.strictObject({
  quote_valid_days: z.int().min(1),
  hold_days: z.int().min(0),
  payment_days: z.int().min(0),
  weekends: z.enum(['charged', 'free']),
  holidays: z.enum(['charged', 'free']),
  holiday_dates: z.array(z.string().refine(isIsoDate, 'is not a date in the form YYYY-MM-DD')),
  transit: z.enum(['charged', 'free']),
  charge_ends: z.enum(['off-hire notice', 'collection']),
  /** Hire of a piece that was charged as lost and is found, for the days until it is. */
  hire_until_found: z.enum(['charged', 'free']).default('charged'),
  days_per_week: z.union([z.literal(5), z.literal(7)]),
  unused_return_credit_percent: percent,
  discount_limit_percent: percent,
  text: z.array(text).min(1),
});

/** The house's own words beside how it says them in German: terms, bands, exclusions, rules, items of the price list. */
const germanWordsSchema = z
  .array(z.strictObject({ english: text.max(1000), german: text.max(1000) }))
  .max(300)
  .default([]);

const bandSchema = z.strictObject({
  id: text,
  name: text,
  up_to_km: z.number().positive(),
  delivery_minor: minor,
  collection_minor: minor,
  included_kg: z.number().nonnegative(),
  per_extra_100_kg_minor: minor,
});

export const houseRuleSchema = z
  .strictObject({
    id: text.max(60).regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'holds small letters, digits and hyphens only'),
    kind: z.enum(HOUSE_RULE_KINDS),
    value: text.max(60),
    sentence: text.max(300),
    /** Who asks for it, or where it was agreed; printed beside the rule. */
    source: text.max(200).optional(),
    /** Switched off: kept, and not asked. */
    off: z.literal(true).optional(),
  })
  .superRefine((rule, context) => {
    const wrong = wrongRuleValue(rule);
    if (wrong !== null) context.addIssue({ code: 'custom', path: ['value'], message: wrong });
  });

/** What is charged when something comes back in need of work; what is left out has no price and is typed each time. */
const returnPricesSchema = z.strictObject({
  workshop_minor_per_hour: minor.optional(),
  cleaning_dirty_minor: minor.optional(),
  cleaning_water_minor: minor.optional(),
  cleaning_sewage_minor: minor.optional(),
  cleaning_product_minor: minor.optional(),
  cleaning_unknown_minor: minor.optional(),
});

/** What one unit of the house's currency buys of others, in which customers are quoted. */
const exchangeSchema = z
  .array(
    z.strictObject({
      currency: z.string().refine(isKnownCurrency, 'is not a currency whose decimals are known, such as USD'),
      rate: z
        .number()
        .min(1 / RATE_STEPS)
        .max(1_000_000),
    }),
  )
  .max(50)
  .refine((rows) => new Set(rows.map(({ currency }) => currency)).size === rows.length, 'names a currency twice')
  .default([]);

/** What is a price, and therefore holds from a day on. */
const priceFields = {
  tax_categories: z.array(taxCategorySchema).min(1),
  tax_of: z.strictObject({ hire: text, waiver: text, sale: text, delivery: text, labour: text }),
  waiver: z.strictObject({ percent, leaves_out: z.array(text) }),
  deposit: z.strictObject({ new_customer_percent: percent, reason: text }),
  delivery_bands: z.array(bandSchema).min(1),
  labour_minor_per_hour: minor,
  price_list: priceListSchema,
  exchange: exchangeSchema,
  returns: returnPricesSchema.optional(),
};

/** What is no price, and holds at once. */
const standingFields = {
  name: text,
  line: text,
  address: z.array(text).min(1),
  telephone: text,
  email: text,
  registration: text,
  currency: z.string().regex(/^[A-Z]{3}$/, 'is not a code of ISO 4217'),
  depots: z.array(z.strictObject({ code: text, name: text, address: z.array(text).min(1) })).min(1),
  terms: termsSchema,
  turnaround_days: z.int().min(0),
  lift_limit_kg: z.number().positive(),
  german_words: germanWordsSchema,
  self_service: selfServiceFactsSchema,
};

export const houseStandingSchema = z.strictObject(standingFields);

export const housePricesSchema = z.strictObject(priceFields).superRefine(knowsItsTaxes);

export const houseRulesSchema = z.array(houseRuleSchema).superRefine((rules, context) => {
  for (const [index, { id }] of rules.entries()) {
    if (rules.findIndex((rule) => rule.id === id) < index)
      context.addIssue({ code: 'custom', path: [index, 'id'], message: `is used twice: ${id}` });
  }
});

export type HouseStandingJson = z.input<typeof houseStandingSchema>;
export type HousePricesJson = z.input<typeof housePricesSchema>;
export type HouseRuleJson = z.input<typeof houseRuleSchema>;

const houseSchema = z
  .strictObject({ ...standingFields, ...priceFields, house_rules: houseRulesSchema })
  .superRefine(knowsItsTaxes);

export type HouseJson = z.input<typeof houseSchema>;

interface TaxUse {
  readonly tax_of: Readonly<Record<string, string>>;
  readonly tax_categories: readonly { readonly code: string }[];
}

function knowsItsTaxes(house: TaxUse, context: z.RefinementCtx): void {
  for (const [use, code] of Object.entries(house.tax_of)) {
    if (house.tax_categories.some((category) => category.code === code)) continue;
    context.addIssue({
      code: 'custom',
      path: ['tax_of', use],
      message: `names the category ${code}, which is not listed`,
    });
  }
}

export interface HouseFacts {
  readonly name: string;
  readonly line: string;
  readonly address: readonly string[];
  readonly telephone: string;
  readonly email: string;
  readonly registration: string;
  readonly depots: readonly { readonly code: string; readonly name: string; readonly address: readonly string[] }[];
  /** In the shape that lib/pricing takes. */
  readonly pricing: {
    readonly currency: string;
    readonly taxCategories: readonly {
      readonly code: string;
      readonly name: string;
      readonly percent: number;
      readonly reason?: string;
    }[];
    readonly taxOf: {
      readonly hire: string;
      readonly waiver: string;
      readonly sale: string;
      readonly delivery: string;
      readonly labour: string;
    };
    readonly waiver: { readonly percent: number; readonly leavesOut: readonly string[] };
    readonly daysPerWeek: 5 | 7;
    readonly unusedReturnCreditPercent: number;
  };
  readonly charging: {
    readonly weekends: 'charged' | 'free';
    readonly holidays: 'charged' | 'free';
    readonly holidayDates: readonly string[];
    readonly transit: 'charged' | 'free';
  };
  readonly terms: {
    readonly quoteValidDays: number;
    readonly holdDays: number;
    readonly paymentDays: number;
    readonly chargeEnds: 'off-hire notice' | 'collection';
    /** Absent in what was frozen before it was kept. */
    readonly hireUntilFound?: 'charged' | 'free';
    readonly discountLimitPercent: number;
    readonly text: readonly string[];
  };
  readonly deposit: { readonly percentOfGross: number; readonly reason: string };
  readonly deliveryBands: readonly {
    readonly id: string;
    readonly name: string;
    readonly up_to_km: number;
    readonly delivery_minor: Minor;
    readonly collection_minor: Minor;
    readonly included_kg: number;
    readonly per_extra_100_kg_minor: Minor;
  }[];
  /** What an hour of a crew costs when plans are compared, and when our people work. */
  readonly labourMinorPerHour: Minor;
  readonly turnaroundDays: number;
  readonly liftLimit: Kilograms;
  readonly houseRules: readonly HouseRule[];
  /** What is quoted again and again beside the rates. */
  readonly priceList: PriceList;
  /** What one unit of its own currency buys of others; absent in what was frozen before it was kept, as what follows. */
  readonly exchange?: readonly { readonly currency: string; readonly rate: number }[];
  readonly returns?: ReturnRates;
  readonly germanWords?: readonly { readonly english: string; readonly german: string }[];
  readonly selfService?: SelfServiceFacts;
}

export function parseHouse(json: unknown): Result<HouseFacts> {
  const parsed = houseSchema.safeParse(json);
  if (!parsed.success) {
    const sentence = parsed.error.issues
      .map((issue) => `House file, ${issue.path.join('.')}: ${issue.message}.`)
      .join(' ');
    return failed({ code: 'house-unreadable', sentence });
  }
  return ok(readHouse(parsed.data));
}

function readHouse(house: z.output<typeof houseSchema>): HouseFacts {
  const { terms } = house;
  return {
    name: house.name,
    line: house.line,
    address: house.address,
    telephone: house.telephone,
    email: house.email,
    registration: house.registration,
    depots: house.depots,
    pricing: {
      currency: house.currency,
      taxCategories: house.tax_categories.map(({ reason, ...category }) =>
        reason === undefined ? category : { ...category, reason },
      ),
      taxOf: house.tax_of,
      waiver: { percent: house.waiver.percent, leavesOut: house.waiver.leaves_out },
      daysPerWeek: terms.days_per_week,
      unusedReturnCreditPercent: terms.unused_return_credit_percent,
    },
    charging: {
      weekends: terms.weekends,
      holidays: terms.holidays,
      holidayDates: terms.holiday_dates,
      transit: terms.transit,
    },
    terms: {
      quoteValidDays: terms.quote_valid_days,
      holdDays: terms.hold_days,
      paymentDays: terms.payment_days,
      chargeEnds: terms.charge_ends,
      hireUntilFound: terms.hire_until_found,
      discountLimitPercent: terms.discount_limit_percent,
      text: terms.text,
    },
    deposit: { percentOfGross: house.deposit.new_customer_percent, reason: house.deposit.reason },
    deliveryBands: house.delivery_bands,
    labourMinorPerHour: house.labour_minor_per_hour,
    turnaroundDays: house.turnaround_days,
    liftLimit: kilograms(house.lift_limit_kg),
    priceList: house.price_list,
    exchange: house.exchange,
    returns: returnRates(house.returns ?? {}),
    ...(house.german_words.length === 0 ? {} : { germanWords: house.german_words }),
    selfService: house.self_service,
    houseRules: house.house_rules
      .filter((rule) => rule.off !== true)
      .map(({ id, kind, value, sentence }) => ({ id, kind, value, sentence })),
  };
}

function returnRates(prices: z.output<typeof returnPricesSchema>): ReturnRates {
  const cleaning = {
    dirty: prices.cleaning_dirty_minor,
    water: prices.cleaning_water_minor,
    sewage: prices.cleaning_sewage_minor,
    product: prices.cleaning_product_minor,
    unknown: prices.cleaning_unknown_minor,
  };
  return {
    workshop_minor_per_hour: prices.workshop_minor_per_hour ?? null,
    cleaning_minor: Object.fromEntries(Object.entries(cleaning).filter(([, price]) => price !== undefined)),
  };
}
