/*
 * Reads one enquiry with its site and choices in the forms the core understands.
 * Invariant: an enquiry that is not there is an answer, not an exception.
 * Not here: its lines (schedule-record.ts).
 * Read next: ../schedule/schedule-record.ts.
 */
import { type EnquiryRow, findEnquiry } from '#db/queries/enquiries.ts';
import { findContact } from '#db/queries/places.ts';
import { type PlanConstraints, parseConstraints } from '#lib/contracts/constraints.ts';
import { parseSite } from '#lib/contracts/site.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Preference } from '#lib/equipment/choices.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Context, today } from '#lib/services/context.ts';
import { type CustomerFacts, readCustomer } from '#lib/services/customers/customer-facts.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';

export const PREFERENCES: readonly Preference[] = ['cost', 'pieces', 'time', 'surest'];

export interface EnquiryRecord {
  readonly row: EnquiryRow;
  readonly customer: CustomerFacts;
  readonly site: Site;
  readonly constraints: PlanConstraints;
  readonly preference: Preference;
  readonly paperUnits: UnitSystem;
}

export function readEnquiry(context: Context, enquiryId: number): Result<EnquiryRecord> {
  const db = context.database.db;
  const row = findEnquiry(db, enquiryId);
  if (!row) return noSuchEnquiry(enquiryId);
  const site = parseSite(JSON.parse(row.site_json), { startsOn: today(context) });
  if (!site.ok) return site;
  const customer = readCustomer(context, row.customer_id);
  const ruled = { ...site.value, houseRules: [...customer.houseRules, ...site.value.houseRules] };
  return ok({
    row,
    customer: { ...customer, onPapers: addressed(context, { row, onPapers: customer.onPapers }) },
    site: withHouseRules(context, ruled),
    constraints: parseConstraints(JSON.parse(row.constraints_json)),
    preference: PREFERENCES.find((name) => name === row.preference) ?? 'cost',
    paperUnits: row.paper_units === 'us' ? 'us' : 'si',
  });
}

/** Papers name the person and the reference of this enquiry, where it has them. */
function addressed(
  context: Context,
  { row, onPapers }: { readonly row: EnquiryRow; readonly onPapers: CustomerFacts['onPapers'] },
): CustomerFacts['onPapers'] {
  const contact = row.contact_id === null ? undefined : findContact(context.database.db, row.contact_id);
  return {
    ...onPapers,
    ...(contact === undefined ? {} : { contact: contact.name }),
    ...(row.reference === '' ? {} : { reference: row.reference }),
  };
}

/** The rules of the house hold everywhere; those of the customer and of the site come on top. */
export function withHouseRules(context: Context, site: Site): Site {
  const own = new Set(site.houseRules.map(({ id }) => id));
  const house = houseFacts(context).houseRules.filter(({ id }) => !own.has(id));
  return { ...site, houseRules: [...house, ...site.houseRules] };
}

export function noSuchEnquiry(enquiryId: number): Result<never> {
  return failed({
    code: 'no-such-enquiry',
    sentence: `There is no enquiry ${enquiryId}; it may have been removed. Go back to the list.`,
  });
}
