/*
 * Opens a new enquiry for a known or a new customer, with a site that holds only what was said or what a site of the customer holds.
 * Invariant: the number, the enquiry, a new customer and the log entries are written together or not at all.
 * Not here: the schedule (receive-list.ts).
 * Read next: open-enquiry.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findCustomer } from '#db/queries/customers.ts';
import { insertEnquiry } from '#db/queries/enquiries.ts';
import { takeNumber } from '#db/queries/house.ts';
import { findContact, findSite, type SiteRow } from '#db/queries/places.ts';
import { constraintsToJson, NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { parseSite } from '#lib/contracts/site.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { readCustomer } from '#lib/services/customers/customer-facts.ts';
import { noSuchContact } from '#lib/services/customers/save-contact.ts';
import { NOTHING_AGREED, writeCustomer } from '#lib/services/customers/save-customer.ts';
import { noSuchSite } from '#lib/services/customers/save-site.ts';
import { logChange } from '#lib/services/log-change.ts';

export interface NewEnquiry {
  readonly title: string;
  readonly customer: { readonly id: number } | { readonly name: string };
  readonly site: unknown;
  /** A site of the customer whose facts are copied; what `site` says comes on top. */
  readonly site_id?: number | undefined;
  readonly contact_id?: number | undefined;
  readonly reference?: string | undefined;
  readonly source?: string | undefined;
  readonly due_on?: string | undefined;
  /** Whether it is the work of whoever opens it. */
  readonly mine?: 'yes' | 'no' | undefined;
}

export function createEnquiry(
  context: Context,
  input: NewEnquiry,
): Result<{ readonly id: number; readonly number: string }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  if (input.title.trim() === '')
    return failed({ code: 'title-missing', sentence: 'Give the enquiry a title, such as the place or the job.' });
  const named = checkCustomer(context, input);
  if (!named.ok) return named;
  const place = placeOf(context, input);
  if (!place.ok) return place;
  const facts = { ...(place.value === null ? {} : JSON.parse(place.value.facts_json)), ...plain(input.site) };
  const site = parseSite(facts, { startsOn: today(context) });
  if (!site.ok) return site;
  return ok(
    context.database.db.transaction((tx) => write(tx, { context, input, place: place.value, facts }), {
      behavior: 'immediate',
    }),
  );
}

function checkCustomer(context: Context, { customer, contact_id }: NewEnquiry): Result<true> {
  const db = context.database.db;
  if ('id' in customer && !findCustomer(db, customer.id)) {
    return failed({
      code: 'no-such-customer',
      sentence: 'That customer is not known; choose one from the list or type a new name.',
    });
  }
  if ('name' in customer && customer.name.trim() === '') {
    return failed({ code: 'customer-missing', sentence: 'Choose a customer or type the name of a new one.' });
  }
  if (contact_id === undefined) return ok(true);
  const owner = findContact(db, contact_id)?.customer_id;
  return 'id' in customer && owner === customer.id ? ok(true) : noSuchContact();
}

function placeOf(context: Context, { customer, site_id }: NewEnquiry): Result<SiteRow | null> {
  if (site_id === undefined) return ok(null);
  const site = findSite(context.database.db, site_id);
  return site && 'id' in customer && site.customer_id === customer.id ? ok(site) : noSuchSite();
}

function plain(site: unknown): Readonly<Record<string, unknown>> {
  return typeof site === 'object' && site !== null ? { ...site } : {};
}

interface Writing {
  readonly context: Context;
  readonly input: NewEnquiry;
  readonly place: SiteRow | null;
  readonly facts: Readonly<Record<string, unknown>>;
}

function write(
  tx: DbOrTx,
  { context, input, place, facts }: Writing,
): { readonly id: number; readonly number: string } {
  const at = timestamp(context);
  const customerId =
    'id' in input.customer
      ? input.customer.id
      : writeCustomer(tx, { context, entry: { name: input.customer.name, facts: NOTHING_AGREED } }).id;
  const number = `E-${String(takeNumber(tx, 'enquiry')).padStart(5, '0')}`;
  const person = input.mine === 'yes' ? actingPerson(context) : { id: '', name: '' };
  const id = insertEnquiry(tx, {
    number,
    customer_id: customerId,
    title: input.title.trim(),
    state: person.id === '' ? 'new' : 'being worked',
    site_json: JSON.stringify(facts),
    constraints_json: JSON.stringify(constraintsToJson(NO_CONSTRAINTS)),
    preference: 'cost',
    paper_units: readCustomer(context, customerId).terms.units ?? 'si',
    ...(place === null ? {} : { site_id: place.id, site_version: place.version }),
    contact_id: input.contact_id ?? null,
    assigned_to: person.id,
    assigned_name: person.name,
    due_on: input.due_on ?? null,
    reference: input.reference?.trim() ?? '',
    source: input.source?.trim() ?? '',
    created_at: at,
    updated_at: at,
  });
  logChange(tx, { context, deed: { action: 'enquiry opened', subject: `enquiry ${id}`, detail: { number } } });
  return { id, number };
}
