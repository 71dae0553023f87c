/*
 * One customer with everything that belongs to it: contacts, sites, enquiries, quotes and bookings, and who changed what.
 * Invariant: reads only; lists that may be long are cut, with how many there are.
 * Not here: changing it (save-customer.ts).
 * Read next: save-customer.ts.
 */
import { auditOf } from '#db/queries/audit.ts';
import { findCustomer } from '#db/queries/customers.ts';
import {
  bookingsOfCustomer,
  type CustomerBooking,
  type CustomerQuote,
  quotesOfCustomer,
} from '#db/queries/dealings.ts';
import { contactsOf, enquiriesBySite, sitesOf } from '#db/queries/places.ts';
import type { CustomerFacts } from '#lib/contracts/customer.ts';
import { rulesOfPlace, type SiteRules } from '#lib/contracts/site.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { type EnquiriesFound, EVERY_ENQUIRY, findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { sheetOf } from './customer-facts.ts';
import { noSuchCustomer } from './save-customer.ts';

export interface ContactView {
  readonly id: number;
  readonly version: number;
  readonly name: string;
  readonly position: string;
  readonly email: string;
  readonly telephone: string;
  readonly note: string;
  readonly siteId: number | null;
  readonly archived: 'yes' | 'no';
}

export interface SiteView {
  readonly id: number;
  readonly version: number;
  readonly name: string;
  readonly address: string;
  readonly accessNote: string;
  readonly facts: Readonly<Record<string, unknown>>;
  /** Those that were switched off too. */
  readonly rules: SiteRules;
  readonly enquiries: number;
  readonly archived: 'yes' | 'no';
}

export interface CustomerView {
  readonly id: number;
  readonly code: string;
  readonly name: string;
  readonly version: number;
  readonly archived: 'yes' | 'no';
  readonly facts: CustomerFacts;
  readonly contacts: readonly ContactView[];
  readonly sites: readonly SiteView[];
  readonly enquiries: EnquiriesFound;
  readonly quotes: readonly CustomerQuote[];
  readonly bookings: readonly CustomerBooking[];
  readonly bands: readonly { readonly id: string; readonly name: string }[];
  /** The newest first. */
  readonly log: readonly { readonly at: string; readonly who: string; readonly action: string }[];
}

export function openCustomer(context: Context, customerId: number): Result<CustomerView> {
  const allowed = authorise(context, 'read customers');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const row = findCustomer(db, customerId);
  if (!row) return noSuchCustomer();
  const enquiries = findEnquiries(context, { ...EVERY_ENQUIRY, customerId });
  if (!enquiries.ok) return enquiries;
  return ok({
    ...{ id: row.id, code: row.code, name: row.name, version: row.version, archived: yesWhen(row.archived_at) },
    facts: sheetOf(row),
    contacts: contactsOfCustomer(context, customerId),
    sites: sitesOfCustomer(context, customerId),
    enquiries: enquiries.value,
    quotes: quotesOfCustomer(db, customerId),
    bookings: bookingsOfCustomer(db, customerId),
    bands: houseFacts(context).deliveryBands.map(({ id, name }) => ({ id, name })),
    log: auditOf(db, `customer ${customerId}`).map(({ at, who, action }) => ({ at, who, action })),
  });
}

function contactsOfCustomer(context: Context, customerId: number): readonly ContactView[] {
  return contactsOf(context.database.db, customerId).map((row) => {
    const { id, version, name, position, email, telephone, note } = row;
    const archived = yesWhen(row.archived_at);
    return { id, version, name, position, email, telephone, note, siteId: row.site_id, archived };
  });
}

function sitesOfCustomer(context: Context, customerId: number): readonly SiteView[] {
  const db = context.database.db;
  const counts = enquiriesBySite(db, customerId);
  return sitesOf(db, customerId).map((row) => ({
    ...{ id: row.id, version: row.version, name: row.name, address: row.address, accessNote: row.access_note },
    facts: JSON.parse(row.facts_json),
    rules: rulesOfPlace(JSON.parse(row.facts_json)),
    enquiries: counts.get(row.id) ?? 0,
    archived: yesWhen(row.archived_at),
  }));
}

function yesWhen(archivedAt: string | null): 'yes' | 'no' {
  return archivedAt === null ? 'no' : 'yes';
}
