/*
 * The customers of the house by name.
 * Invariant: reads only.
 * Not here: their enquiries.
 * Read next: create-enquiry.ts.
 */
import { listCustomers as listRows } from '#db/queries/customers.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from './authorise.ts';
import type { Context } from './context.ts';

export interface CustomerView {
  readonly id: number;
  readonly code: string;
  readonly name: string;
}

export function listCustomers(context: Context): Result<readonly CustomerView[]> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  return ok(listRows(context.database.db).map(({ id, code, name }) => ({ id, code, name })));
}
