/*
 * A customer as the house keeps it: where papers go, and what is agreed.
 * Invariant: what is not agreed is null or empty, never a silent default; the delivery band is an id of the house's bands.
 * Not here: sites and contacts, which have tables of their own.
 * Read next: house.ts, house-rule-values.ts.
 */
import { z } from 'zod';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { houseRulesSchema } from './house.ts';

export const DATE_FORMATS = ['2 Mar 2026', '2026-03-02', '02.03.2026', '03/02/2026'] as const;
export const NUMBER_FORMATS = ['1 234.5', '1 234,5', '1,234.5', '1.234,5'] as const;

const PAYMENT_DAYS_MOST = 365;
const RULES_MOST = 50;

const text = z.string().trim().min(1);
const line = z.string().trim().max(200).default('');

export const customerFactsSchema = z.object({
  address: z.array(z.string().trim().min(1).max(200)).max(8).default([]),
  /** The person or desk that papers are addressed to. */
  contact: line,
  email: line,
  telephone: line,
  /** Id of a delivery band of the house; null where none is agreed. */
  delivery_band: text.nullable().default(null),
  /** A new account pays a deposit. */
  account: z.enum(['credit', 'new']).default('new'),
  since: line,
  payment_days: z.int().min(0).max(PAYMENT_DAYS_MOST).nullable().default(null),
  discount_percent: z.number().min(0).max(100).nullable().default(null),
  order_number: z.enum(['asked for', 'not asked for']).default('not asked for'),
  /** Code of ISO 4217 in which they want to be quoted; it takes an exchange rate of the house. */
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, 'is not a code of ISO 4217, such as EUR')
    .nullable()
    .default(null),
  units: z.enum(['si', 'us']).nullable().default(null),
  date_format: z.enum(DATE_FORMATS).nullable().default(null),
  number_format: z.enum(NUMBER_FORMATS).nullable().default(null),
  /** Tag of BCP 47. */
  language: z
    .string()
    .regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, 'is not a language tag, such as en or pt-BR')
    .nullable()
    .default(null),
  note: z.string().trim().max(2000).default(''),
  house_rules: houseRulesSchema.max(RULES_MOST).default([]),
});
export type CustomerFacts = z.output<typeof customerFactsSchema>;

/** The facts with some of them changed, read whole: what is wrong is told by its field. */
export function changedFacts(facts: CustomerFacts, change: Readonly<Record<string, unknown>>): Result<CustomerFacts> {
  const parsed = customerFactsSchema.strict().safeParse({ ...facts, ...change });
  if (parsed.success) return ok(parsed.data);
  const sentences = parsed.error.issues.map(
    ({ path, message }) => `${path.join('.').replaceAll('_', ' ')}: ${message}.`,
  );
  return failed({ code: 'customer-unreadable', sentence: `This cannot be kept of a customer: ${sentences.join(' ')}` });
}

/** A customer of the demo house, in its file. */
const customerSchema = customerFactsSchema.extend({ code: text, name: text }).strict();
export type DemoCustomer = z.output<typeof customerSchema>;

export function parseCustomers(json: unknown): Result<readonly DemoCustomer[]> {
  const parsed = z.array(customerSchema).safeParse(json);
  if (parsed.success) return ok(parsed.data);
  const sentence = parsed.error.issues
    .map((issue) => `Customers, ${issue.path.join('.')}: ${issue.message}.`)
    .join(' ');
  return failed({ code: 'customers-unreadable', sentence });
}

/** A person at a customer of the demo house, in its file. */
const demoContactSchema = z.strictObject({
  /** Code of the customer. */
  customer: text,
  name: text,
  position: line,
  email: line,
  telephone: line,
  note: line,
});
export type DemoContact = z.output<typeof demoContactSchema>;

export function parseContacts(json: unknown): Result<readonly DemoContact[]> {
  const parsed = z.array(demoContactSchema).safeParse(json);
  if (parsed.success) return ok(parsed.data);
  const sentence = parsed.error.issues.map((issue) => `Contacts, ${issue.path.join('.')}: ${issue.message}.`).join(' ');
  return failed({ code: 'contacts-unreadable', sentence });
}
