/*
 * What is known of a customer: name, address, contact and the delivery band agreed.
 * Invariant: a customer of whom only the name is known is read without complaint.
 * Not here: the list of customers (list-customers.ts).
 * Read next: enquiry-record.ts.
 */
import { findCustomer } from '#db/queries/customers.ts';
import { customerSchema } from '#lib/contracts/customer.ts';
import type { CustomerInput } from '#lib/documents/paper-inputs.ts';
import type { Context } from './context.ts';

export interface CustomerTerms {
  /** Id of a delivery band of the house; null where none is agreed. */
  readonly deliveryBand: string | null;
  /** A new account pays a deposit before despatch. */
  readonly account: 'credit' | 'new';
  /** Null where the house's own hold. */
  readonly paymentDays: number | null;
  readonly orderNumber: 'asked for' | 'not asked for';
}

export const NO_TERMS_AGREED: CustomerTerms = {
  deliveryBand: null,
  account: 'new',
  paymentDays: null,
  orderNumber: 'not asked for',
};

export interface CustomerFacts {
  readonly id: number;
  readonly name: string;
  readonly onPapers: CustomerInput;
  readonly terms: CustomerTerms;
}

export function readCustomer(context: Context, customerId: number): CustomerFacts {
  const row = findCustomer(context.database.db, customerId);
  const name = row?.name ?? 'Unknown customer';
  const read = customerSchema.safeParse(JSON.parse(row?.facts_json ?? '{}'));
  if (!read.success) return { id: customerId, name, onPapers: { name, address: [] }, terms: NO_TERMS_AGREED };
  const { contact, address, delivery_band, account } = read.data;
  return {
    id: customerId,
    name,
    onPapers: { name: read.data.name, contact, address },
    terms: { deliveryBand: delivery_band, account, paymentDays: null, orderNumber: 'not asked for' },
  };
}
