/*
 * What is known of a customer: name, address, contact, what is agreed, and the customer's own house rules.
 * Invariant: a customer of whom only the name is known is read without complaint; facts that cannot be read stop, they are never dropped.
 * Not here: the list of customers (list-customers.ts) and changing one (save-customer.ts).
 * Read next: ../enquiries/enquiry-record.ts.
 */
import { type CustomerRow, findCustomer } from '#db/queries/customers.ts';
import {
  type CustomerFacts as CustomerSheet,
  customerFactsSchema,
  type DATE_FORMATS,
  type NUMBER_FORMATS,
} from '#lib/contracts/customer.ts';
import type { CustomerInput } from '#lib/documents/papers/paper-inputs.ts';
import type { DateForm } from '#lib/documents/words/person-forms.ts';
import type { NumberForm, WrittenForms } from '#lib/documents/words/written-forms.ts';
import type { HouseRule } from '#lib/duty/site.ts';
import type { Context } from '#lib/services/context.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { type Language, languageNamed } from '#lib/wording/language.ts';

export interface CustomerTerms {
  /** Id of a delivery band of the house; null where none is agreed. */
  readonly deliveryBand: string | null;
  /** A new account pays a deposit before despatch. */
  readonly account: 'credit' | 'new';
  /** What follows is null where the house's own terms hold. */
  readonly paymentDays: number | null;
  readonly discountPercent: number | null;
  readonly orderNumber: 'asked for' | 'not asked for';
  readonly units: UnitSystem | null;
}

export const NO_TERMS_AGREED: CustomerTerms = {
  deliveryBand: null,
  account: 'new',
  paymentDays: null,
  discountPercent: null,
  orderNumber: 'not asked for',
  units: null,
};

export interface CustomerFacts {
  readonly id: number;
  readonly name: string;
  readonly onPapers: CustomerInput;
  readonly terms: CustomerTerms;
  /** Code of ISO 4217 in which they want to be quoted; null where the house's own will do. */
  readonly currency: string | null;
  /** How they write dates and figures; null where the house's own form holds for both. */
  readonly forms: WrittenForms | null;
  /** What their papers are written in; English where there are no words in theirs. */
  readonly language: Language;
  /** The customer's rules; each sentence names whose it is. */
  readonly houseRules: readonly HouseRule[];
}

export function readCustomer(context: Context, customerId: number): CustomerFacts {
  const row = findCustomer(context.database.db, customerId);
  const name = row?.name ?? 'Unknown customer';
  const facts = sheetOf(row);
  return {
    id: customerId,
    name,
    onPapers: { name, ...(facts.contact === '' ? {} : { contact: facts.contact }), address: facts.address },
    terms: {
      deliveryBand: facts.delivery_band,
      account: facts.account,
      paymentDays: facts.payment_days,
      discountPercent: facts.discount_percent,
      orderNumber: facts.order_number,
      units: facts.units,
    },
    currency: facts.currency,
    forms: formsOf(facts),
    language: languageOf(facts.language),
    houseRules: facts.house_rules
      .filter((rule) => rule.off !== true)
      .map(({ id, kind, value, sentence }) => ({
        id: `customer-${id}`,
        kind,
        value,
        sentence: `Rule of ${name}: ${sentence}`,
      })),
  };
}

const DATES: Readonly<Record<(typeof DATE_FORMATS)[number], DateForm>> = {
  '2 Mar 2026': 'written',
  '2026-03-02': 'iso',
  '02.03.2026': 'day-month-year',
  '03/02/2026': 'month-day-year',
};

const NUMBERS: Readonly<Record<(typeof NUMBER_FORMATS)[number], NumberForm>> = {
  '1 234.5': 'space-point',
  '1 234,5': 'space-comma',
  '1,234.5': 'comma-point',
  '1.234,5': 'point-comma',
};

/** German papers have German dates and figures where nothing else is agreed; a month written out would be English. */
function formsOf({ date_format, number_format, language }: CustomerSheet): WrittenForms | null {
  const isGerman = languageOf(language) === 'de';
  const chosen = date_format === null ? 'written' : DATES[date_format];
  const dates = isGerman && chosen === 'written' ? 'day-month-year' : chosen;
  const numbers = number_format === null ? (isGerman ? 'space-comma' : 'space-point') : NUMBERS[number_format];
  return dates === 'written' && numbers === 'space-point' ? null : { dates, numbers, commas: 'rewritten' };
}

function languageOf(tag: string | null): Language {
  return languageNamed(tag?.split('-')[0]) ?? 'en';
}

/** The facts as they are stored, every field present. */
export function sheetOf(row: Pick<CustomerRow, 'facts_json'> | undefined): CustomerSheet {
  return customerFactsSchema.parse(JSON.parse(row?.facts_json ?? '{}'));
}
