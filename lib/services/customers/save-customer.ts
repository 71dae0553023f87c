/*
 * Makes a customer, or changes what is known of and agreed with one.
 * Invariant: a change made in the meantime by somebody else is a clear conflict, never lost; facts left out stay as they are.
 * Not here: who may be here already (alike-customers.ts); sites and contacts (save-site.ts, save-contact.ts).
 * Read next: open-customer.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { changeCustomer as changeRow, findCustomer, insertCustomer } from '#db/queries/customers.ts';
import { takeNumber } from '#db/queries/house.ts';
import { type CustomerFacts, changedFacts, customerFactsSchema } from '#lib/contracts/customer.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { sheetOf } from './customer-facts.ts';

interface CustomerEntry {
  readonly name: string;
  readonly facts: CustomerFacts;
}

export function createCustomer(
  context: Context,
  entry: CustomerEntry,
): Result<{ readonly id: number; readonly code: string }> {
  const allowed = authorise(context, 'change customers');
  if (!allowed.ok) return allowed;
  const sound = soundEntry(context, entry);
  if (!sound.ok) return sound;
  return ok(context.database.db.transaction((tx) => writeCustomer(tx, { context, entry }), { behavior: 'immediate' }));
}

/** Writes the row and the log; for use cases that make a customer along the way. */
export function writeCustomer(
  tx: DbOrTx,
  { context, entry }: { readonly context: Context; readonly entry: CustomerEntry },
): { readonly id: number; readonly code: string } {
  const at = timestamp(context);
  const code = `C-${String(takeNumber(tx, 'customer')).padStart(4, '0')}`;
  const name = entry.name.trim();
  const id = insertCustomer(tx, {
    code,
    name,
    facts_json: JSON.stringify(entry.facts),
    created_at: at,
    updated_at: at,
  });
  logChange(tx, { context, deed: { action: 'customer made', subject: `customer ${id}`, detail: { code, name } } });
  return { id, code };
}

export const NOTHING_AGREED: CustomerFacts = customerFactsSchema.parse({});

export interface CustomerEdit {
  readonly customerId: number;
  readonly version: number;
  readonly name?: string | undefined;
  /** As it was sent; what is left out stays as it is. */
  readonly facts?: Readonly<Record<string, unknown>> | undefined;
}

export function changeCustomer(context: Context, edit: CustomerEdit): Result<{ readonly version: number }> {
  const allowed = authorise(context, 'change customers');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const row = findCustomer(db, edit.customerId);
  if (!row) return noSuchCustomer();
  if (row.placeholder) return standsForNobody();
  const facts = changedFacts(sheetOf(row), edit.facts ?? {});
  if (!facts.ok) return facts;
  const entry = { name: edit.name ?? row.name, facts: facts.value };
  const sound = soundEntry(context, entry);
  if (!sound.ok) return sound;
  return db.transaction(
    (tx): Result<{ readonly version: number }> => {
      const done = changeRow(tx, {
        id: row.id,
        at: timestamp(context),
        version: edit.version,
        set: { name: entry.name.trim(), facts_json: JSON.stringify(entry.facts) },
      });
      if (!done) return changedMeanwhile('customer');
      const detail = { name: edit.name, ...edit.facts };
      logChange(tx, { context, deed: { action: 'customer changed', subject: `customer ${row.id}`, detail } });
      return ok({ version: edit.version + 1 });
    },
    { behavior: 'immediate' },
  );
}

export function noSuchCustomer(): Result<never> {
  return failed({
    code: 'no-such-customer',
    sentence: 'That customer is not known; go back to the list of customers.',
  });
}

function standsForNobody(): Result<never> {
  return failed({
    code: 'customer-unnamed',
    sentence:
      'This stands for everybody who has not said who they are yet. Take the order over: its enquiry then has a customer of its own, which you can name.',
  });
}

export function changedMeanwhile(what: 'customer' | 'site' | 'contact'): Result<never> {
  return failed({
    code: 'changed-meanwhile',
    sentence: `Somebody else changed this ${what} while you were working. What you typed is still in the form: load the page anew in another window, compare, and save again.`,
  });
}

function soundEntry(context: Context, { name, facts }: CustomerEntry): Result<true> {
  if (name.trim() === '') return failed({ code: 'name-missing', sentence: 'Give the customer a name.' });
  const bands = houseFacts(context).deliveryBands;
  if (facts.delivery_band !== null && !bands.some(({ id }) => id === facts.delivery_band)) {
    return failed({
      code: 'no-such-band',
      sentence: `The house has no delivery band “${facts.delivery_band}”; it has ${bands.map((band) => band.id).join(', ')}.`,
    });
  }
  return ok(true);
}
