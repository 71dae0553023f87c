/*
 * What the form for a booking without a quote offers: the models, the depots, and to those who may read them the customers.
 * Invariant: reads only; only those who may book get it.
 * Not here: trying (try-booking.ts) and booking (book-equipment.ts).
 * Read next: book-equipment.ts.
 */
import { listCustomers } from '#db/queries/customers.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, houseModels } from '#lib/services/house/house-facts.ts';

export interface NewBookingForm {
  readonly models: readonly { readonly number: string; readonly name: string; readonly role: string }[];
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly customers: readonly string[];
  readonly turnaroundDays: number;
  readonly today: string;
}

export function newBookingForm(context: Context): Result<NewBookingForm> {
  const allowed = authorise(context, 'book equipment');
  if (!allowed.ok) return allowed;
  const { depots, turnaroundDays } = houseFacts(context);
  const mayRead = authorise(context, 'read customers').ok;
  return ok({
    models: houseModels(context)
      .filter(({ madeToOrder }) => !madeToOrder)
      .map(({ number, name, role }) => ({ number, name, role })),
    depots: depots.map(({ code, name }) => ({ code, name })),
    customers: mayRead
      ? listCustomers(context.database.db).flatMap(({ name, archived_at }) => (archived_at === null ? [name] : []))
      : [],
    turnaroundDays,
    today: today(context),
  });
}
