/*
 * The house as a form: which field stands where, what it is, and how it is typed.
 * Invariant: every leaf of the standing facts and of the prices has its field; a test holds the two against each other.
 * Not here: what may be written (house.ts).
 * Read next: house.ts.
 */
import { MANUAL_KINDS } from '#lib/pricing/manual-line.ts';
import { MANUAL_UNITS } from '#lib/pricing/manual-units.ts';

interface Named {
  readonly path: string;
  readonly label: string;
  readonly help?: string;
}

export type HouseField =
  | (Named & { readonly kind: 'text' | 'lines' | 'number' | 'amount' })
  | (Named & { readonly kind: 'choice'; readonly choices: readonly (string | number)[] })
  | (Named & { readonly kind: 'rows'; readonly columns: readonly HouseField[] });

export interface HouseSection {
  readonly title: string;
  readonly fields: readonly HouseField[];
}

const CHARGED = ['charged', 'free'] as const;

export const STANDING_SECTIONS: readonly HouseSection[] = [
  {
    title: 'Name and address',
    fields: [
      { path: 'name', label: 'Name of the house', kind: 'text' },
      { path: 'line', label: 'What it does, in a line', kind: 'text' },
      { path: 'address', label: 'Address', kind: 'lines', help: 'One line below the other.' },
      { path: 'telephone', label: 'Telephone', kind: 'text' },
      { path: 'email', label: 'Email', kind: 'text' },
      { path: 'registration', label: 'Registration', kind: 'text', help: 'Printed at the foot of quotes.' },
      { path: 'currency', label: 'Currency', kind: 'text', help: 'Stays as it is, because all rates are in it.' },
      {
        path: 'depots',
        label: 'Depots',
        kind: 'rows',
        columns: [
          { path: 'code', label: 'Code', kind: 'text' },
          { path: 'name', label: 'Name', kind: 'text' },
          { path: 'address', label: 'Address', kind: 'lines' },
        ],
      },
    ],
  },
  {
    title: 'Terms',
    fields: [
      { path: 'terms.quote_valid_days', label: 'Quotes are valid, days', kind: 'number' },
      { path: 'terms.hold_days', label: 'Units are held after acceptance, days', kind: 'number' },
      { path: 'terms.payment_days', label: 'Payment within, days', kind: 'number' },
      { path: 'terms.weekends', label: 'Weekends', kind: 'choice', choices: CHARGED },
      { path: 'terms.holidays', label: 'Holidays', kind: 'choice', choices: CHARGED },
      { path: 'terms.holiday_dates', label: 'Dates of holidays', kind: 'lines', help: 'One date a line: 2026-12-25.' },
      { path: 'terms.transit', label: 'Days on the road', kind: 'choice', choices: CHARGED },
      { path: 'terms.charge_ends', label: 'Charge ends', kind: 'choice', choices: ['off-hire notice', 'collection'] },
      {
        path: 'terms.hire_until_found',
        label: 'Hire until a lost piece is found',
        kind: 'choice',
        choices: CHARGED,
        help: 'Taken off what is given back of its loss.',
      },
      { path: 'terms.days_per_week', label: 'Days that make a week', kind: 'choice', choices: [5, 7] },
      { path: 'terms.unused_return_credit_percent', label: 'Credit for unused sale items, %', kind: 'number' },
      { path: 'terms.discount_limit_percent', label: 'Discount without approval, up to %', kind: 'number' },
      { path: 'terms.text', label: 'Terms as printed', kind: 'lines', help: 'One term a line.' },
    ],
  },
  {
    title: 'Work in the yard',
    fields: [
      { path: 'turnaround_days', label: 'Turnaround between hires, days', kind: 'number' },
      { path: 'lift_limit_kg', label: 'One person lifts at most, kg', kind: 'number' },
    ],
  },
  {
    title: 'In German',
    fields: [
      {
        path: 'german_words',
        label: 'What the house writes itself',
        kind: 'rows',
        help: 'Terms, bands, exclusions, rules and items, each exactly as it stands in English. What has no German words stays English on German papers.',
        columns: [
          { path: 'english', label: 'English', kind: 'text' },
          { path: 'german', label: 'German', kind: 'text' },
        ],
      },
    ],
  },
  {
    title: 'Self-service',
    fields: [
      {
        path: 'self_service.value_limit',
        label: 'Goes to the Desk above, without tax',
        kind: 'number',
        help: 'In whole units of the currency of the house.',
      },
      {
        path: 'self_service.guessed_ceiling_nm',
        label: 'Guessed never-exceed torque goes to the Desk above, N·m',
        kind: 'number',
        help: 'Starting torque at the valve above which what it must never see has to be known.',
      },
      {
        path: 'self_service.wide_above_nm',
        label: 'Too wide a range goes to the Desk above, N·m',
        kind: 'number',
      },
      {
        path: 'self_service.widest_ratio',
        label: 'Too wide is high over low by more than',
        kind: 'number',
      },
      { path: 'self_service.hold_hours', label: 'Orders are held unconfirmed, hours', kind: 'number' },
      {
        path: 'self_service.cancel_until_hour',
        label: 'Cancelled until this hour of the day before, UTC',
        kind: 'number',
      },
      { path: 'self_service.link_days', label: 'Links open an enquiry, days', kind: 'number' },
      { path: 'self_service.link_days_after_hire', label: 'Links open an order after the hire, days', kind: 'number' },
      {
        path: 'self_service.draft_days',
        label: 'Drafts never sent are thrown away, days after their link ended',
        kind: 'number',
      },
    ],
  },
];

const TAX_CODES = ['S', 'Z', 'E', 'AE', 'O'] as const;

export const PRICE_SECTIONS: readonly HouseSection[] = [
  {
    title: 'Taxes',
    fields: [
      {
        path: 'tax_categories',
        label: 'Categories',
        kind: 'rows',
        help: 'Codes of EN 16931: S standard, Z zero rate, E exempt, AE reverse charge, O outside.',
        columns: [
          { path: 'code', label: 'Code', kind: 'choice', choices: TAX_CODES },
          { path: 'name', label: 'Name', kind: 'text' },
          { path: 'percent', label: '%', kind: 'number' },
          { path: 'reason', label: 'Reason where none is charged', kind: 'text' },
        ],
      },
      ...(['hire', 'waiver', 'sale', 'delivery', 'labour'] as const).map(
        (use): HouseField => ({ path: `tax_of.${use}`, label: `Tax on ${use}`, kind: 'choice', choices: TAX_CODES }),
      ),
    ],
  },
  {
    title: 'Waiver, deposit and labour',
    fields: [
      { path: 'waiver.percent', label: 'Damage waiver, % of hire', kind: 'number' },
      { path: 'waiver.leaves_out', label: 'The waiver leaves out', kind: 'lines', help: 'One thing a line.' },
      { path: 'deposit.new_customer_percent', label: 'Deposit of a new customer, %', kind: 'number' },
      { path: 'deposit.reason', label: 'Reason of the deposit', kind: 'text' },
      {
        path: 'labour_minor_per_hour',
        label: 'An hour of a crew',
        kind: 'amount',
        help: 'Steers plans; charged only where our people work.',
      },
    ],
  },
  {
    title: 'Delivery',
    fields: [
      {
        path: 'delivery_bands',
        label: 'Bands',
        kind: 'rows',
        columns: [
          { path: 'id', label: 'Id', kind: 'text' },
          { path: 'name', label: 'Name', kind: 'text' },
          { path: 'up_to_km', label: 'Up to km', kind: 'number' },
          { path: 'delivery_minor', label: 'Delivery', kind: 'amount' },
          { path: 'collection_minor', label: 'Collection', kind: 'amount' },
          { path: 'included_kg', label: 'Included kg', kind: 'number' },
          { path: 'per_extra_100_kg_minor', label: 'Each 100 kg more', kind: 'amount' },
        ],
      },
    ],
  },
  {
    title: 'What came back',
    fields: [
      { path: 'returns.workshop_minor_per_hour', label: 'An hour in the workshop', kind: 'amount' },
      { path: 'returns.cleaning_dirty_minor', label: 'Cleaning a dirty piece', kind: 'amount' },
      { path: 'returns.cleaning_water_minor', label: 'Cleaning a piece from water', kind: 'amount' },
      { path: 'returns.cleaning_sewage_minor', label: 'Cleaning a piece from sewage', kind: 'amount' },
      { path: 'returns.cleaning_product_minor', label: 'Cleaning a piece from a product', kind: 'amount' },
      {
        path: 'returns.cleaning_unknown_minor',
        label: 'Cleaning a piece from nobody knows what',
        kind: 'amount',
        help: 'A price that is left empty is typed at each return.',
      },
    ],
  },
  {
    title: 'Other currencies',
    fields: [
      {
        path: 'exchange',
        label: 'Exchange rates',
        kind: 'rows',
        help: 'Customers who ask for one of these currencies are quoted in it, at the rate of the first day of hire.',
        columns: [
          { path: 'currency', label: 'Code', kind: 'text' },
          { path: 'rate', label: 'One of our own buys', kind: 'number' },
        ],
      },
    ],
  },
  {
    title: 'Price list',
    fields: [
      {
        path: 'price_list',
        label: 'What is quoted beside hire',
        kind: 'rows',
        columns: [
          { path: 'id', label: 'Id', kind: 'text' },
          { path: 'kind', label: 'Kind', kind: 'choice', choices: MANUAL_KINDS },
          { path: 'text', label: 'Words', kind: 'text' },
          { path: 'unit', label: 'Unit', kind: 'choice', choices: MANUAL_UNITS },
          { path: 'unit_minor', label: 'Price', kind: 'amount' },
          { path: 'per', label: 'Per', kind: 'choice', choices: ['day', 'once'] },
        ],
      },
    ],
  },
];
