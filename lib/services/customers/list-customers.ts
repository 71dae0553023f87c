/*
 * The customers in use by name.
 * Invariant: reads only.
 * Not here: their enquiries.
 * Read next: ../enquiries/create-enquiry.ts.
 */
import { findCustomer, listCustomers as listRows } from '#db/queries/customers.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';

export interface CustomerView {
  readonly id: number;
  readonly code: string;
  readonly name: string;
}

export function listCustomers(context: Context): Result<readonly CustomerView[]> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const inUse = listRows(context.database.db).filter(({ archived_at }) => archived_at === null);
  return ok(inUse.map(({ id, code, name }) => ({ id, code, name })));
}

/** Empty where there is none. */
export function nameOfCustomer(context: Context, id: number): string {
  return findCustomer(context.database.db, id)?.name ?? '';
}

/** The delivery bands of the house, for terms to choose from. */
export function listBands(context: Context): Result<readonly { readonly id: string; readonly name: string }[]> {
  const allowed = authorise(context, 'read customers');
  if (!allowed.ok) return allowed;
  return ok(houseFacts(context).deliveryBands.map(({ id, name }) => ({ id, name })));
}
