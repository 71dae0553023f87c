/*
 * A customer as the house keeps it.
 * Invariant: every field is present; the delivery band is an id of the house's bands.
 * Not here: sites, which belong to enquiries.
 * Read next: house.ts.
 */
import { z } from 'zod';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

const text = z.string().trim().min(1);

export const customerSchema = z.strictObject({
  code: text,
  name: text,
  address: z.array(text).min(1),
  contact: text,
  email: text,
  /** Id of a delivery band of the house. */
  delivery_band: text,
  /** A new customer pays a deposit. */
  account: z.enum(['credit', 'new']),
  since: text,
});
export type CustomerFacts = z.infer<typeof customerSchema>;

export function parseCustomers(json: unknown): Result<readonly CustomerFacts[]> {
  const parsed = z.array(customerSchema).safeParse(json);
  if (parsed.success) return ok(parsed.data);
  const sentence = parsed.error.issues
    .map((issue) => `Customers, ${issue.path.join('.')}: ${issue.message}.`)
    .join(' ');
  return failed({ code: 'customers-unreadable', sentence });
}
