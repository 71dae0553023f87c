/*
 * Makes a site of a customer, or changes what holds there.
 * Invariant: facts are read by the same contract as an enquiry's site, and hold no dates, crews or days; a change in the meantime is a conflict.
 * Not here: the copy that an enquiry keeps (link-site.ts).
 * Read next: link-site.ts.
 */
import { findCustomer } from '#db/queries/customers.ts';
import { changeSite as changeRow, findSite, insertSite } from '#db/queries/places.ts';
import { factsOfPlace, parseSite } from '#lib/contracts/site.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { changedMeanwhile, noSuchCustomer } from './save-customer.ts';

export interface SiteEntry {
  readonly name: string;
  readonly address: string;
  readonly access_note: string;
  readonly facts: Readonly<Record<string, unknown>>;
}

export function createSite(
  context: Context,
  { customerId, ...entry }: SiteEntry & { readonly customerId: number },
): Result<{ readonly id: number }> {
  const allowed = authorise(context, 'change customers');
  if (!allowed.ok) return allowed;
  if (!findCustomer(context.database.db, customerId)) return noSuchCustomer();
  const columns = columnsOf(context, entry);
  if (!columns.ok) return columns;
  const at = timestamp(context);
  return context.database.db.transaction(
    (tx) => {
      const id = insertSite(tx, { customer_id: customerId, ...columns.value, created_at: at, updated_at: at });
      const detail = { site: id, name: columns.value.name };
      logChange(tx, { context, deed: { action: 'site made', subject: `customer ${customerId}`, detail } });
      return ok({ id });
    },
    { behavior: 'immediate' },
  );
}

export function changeSite(
  context: Context,
  { siteId, version, ...entry }: SiteEntry & { readonly siteId: number; readonly version: number },
): Result<{ readonly version: number }> {
  const allowed = authorise(context, 'change customers');
  if (!allowed.ok) return allowed;
  const row = findSite(context.database.db, siteId);
  if (!row) return noSuchSite();
  const columns = columnsOf(context, entry);
  if (!columns.ok) return columns;
  return context.database.db.transaction(
    (tx): Result<{ readonly version: number }> => {
      if (!changeRow(tx, { id: siteId, at: timestamp(context), version, set: columns.value }))
        return changedMeanwhile('site');
      const detail = { site: siteId, ...columns.value };
      logChange(tx, { context, deed: { action: 'site changed', subject: `customer ${row.customer_id}`, detail } });
      return ok({ version: version + 1 });
    },
    { behavior: 'immediate' },
  );
}

export function noSuchSite(): Result<never> {
  return failed({ code: 'no-such-site', sentence: 'That site is not known; choose one of the customer’s sites.' });
}

function columnsOf(context: Context, entry: SiteEntry) {
  const name = entry.name.trim();
  if (name === '') return failed({ code: 'name-missing', sentence: 'Give the site a name.' });
  const facts = { ...factsOfPlace(entry.facts), name };
  const site = parseSite(facts, { startsOn: today(context) });
  if (!site.ok) return site;
  return ok({ name, address: entry.address, access_note: entry.access_note, facts_json: JSON.stringify(facts) });
}
