/*
 * Makes a contact of a customer, or changes one.
 * Invariant: a contact's site is one of the same customer; a change in the meantime is a conflict.
 * Not here: people of the house.
 * Read next: put-away.ts.
 */
import { findCustomer } from '#db/queries/customers.ts';
import { changeContact as changeRow, findContact, findSite, insertContact } from '#db/queries/places.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { changedMeanwhile, noSuchCustomer } from './save-customer.ts';
import { noSuchSite } from './save-site.ts';

export interface ContactEntry {
  readonly name: string;
  readonly site_id: number | null;
  readonly position: string;
  readonly email: string;
  readonly telephone: string;
  readonly note: string;
}

export function createContact(
  context: Context,
  { customerId, ...entry }: ContactEntry & { readonly customerId: number },
): Result<{ readonly id: number }> {
  const allowed = authorise(context, 'change customers');
  if (!allowed.ok) return allowed;
  if (!findCustomer(context.database.db, customerId)) return noSuchCustomer();
  const sound = soundEntry(context, { customerId, entry });
  if (!sound.ok) return sound;
  const at = timestamp(context);
  return context.database.db.transaction(
    (tx) => {
      const id = insertContact(tx, { customer_id: customerId, ...entry, created_at: at, updated_at: at });
      const detail = { contact: id, name: entry.name };
      logChange(tx, { context, deed: { action: 'contact made', subject: `customer ${customerId}`, detail } });
      return ok({ id });
    },
    { behavior: 'immediate' },
  );
}

export function changeContact(
  context: Context,
  { contactId, version, ...entry }: ContactEntry & { readonly contactId: number; readonly version: number },
): Result<{ readonly version: number }> {
  const allowed = authorise(context, 'change customers');
  if (!allowed.ok) return allowed;
  const row = findContact(context.database.db, contactId);
  if (!row) return noSuchContact();
  const sound = soundEntry(context, { customerId: row.customer_id, entry });
  if (!sound.ok) return sound;
  return context.database.db.transaction(
    (tx): Result<{ readonly version: number }> => {
      if (!changeRow(tx, { id: contactId, at: timestamp(context), version, set: entry }))
        return changedMeanwhile('contact');
      const detail = { contact: contactId, ...entry };
      logChange(tx, { context, deed: { action: 'contact changed', subject: `customer ${row.customer_id}`, detail } });
      return ok({ version: version + 1 });
    },
    { behavior: 'immediate' },
  );
}

export function noSuchContact(): Result<never> {
  return failed({
    code: 'no-such-contact',
    sentence: 'That contact is not known; choose one of the customer’s contacts.',
  });
}

function soundEntry(
  context: Context,
  { customerId, entry }: { readonly customerId: number; readonly entry: ContactEntry },
): Result<true> {
  if (entry.name.trim() === '') return failed({ code: 'name-missing', sentence: 'Give the contact a name.' });
  if (entry.site_id !== null && findSite(context.database.db, entry.site_id)?.customer_id !== customerId)
    return noSuchSite();
  if (entry.email !== '' && !/^[^@\s]+@[^@\s]+$/.test(entry.email))
    return failed({ code: 'email-unreadable', sentence: 'An address of mail has one @ and no space in it.' });
  return ok(true);
}
