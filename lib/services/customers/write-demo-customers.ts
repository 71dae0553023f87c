/*
 * Writes the demo customers with their contacts, and a site for each demo enquiry's place.
 * Invariant: it runs inside the transaction that writes the demo house.
 * Not here: the enquiries themselves (prepare-house.ts).
 * Read next: ../../../seeds/load.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { insertCustomer } from '#db/queries/customers.ts';
import { insertContact, insertSite } from '#db/queries/places.ts';
import { factsOfPlace } from '#lib/contracts/site.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { demoContacts, demoCustomers } from '#seeds/load.ts';

/** Ids of the customers by code. */
export function writeDemoCustomers(tx: DbOrTx, at: string): ReadonlyMap<string, number> {
  const ids = new Map(
    demoCustomers().map(({ code, name, ...facts }) => [
      code,
      insertCustomer(tx, { code, name, facts_json: JSON.stringify(facts), created_at: at, updated_at: at }),
    ]),
  );
  for (const { customer, ...person } of demoContacts()) {
    const customerId = ids.get(customer);
    invariant(customerId !== undefined, `The demo contact ${person.name} names a customer that is not there.`);
    insertContact(tx, { customer_id: customerId, site_id: null, ...person, created_at: at, updated_at: at });
  }
  return ids;
}

interface DemoPlace {
  readonly at: string;
  readonly customerId: number;
  readonly facts: Readonly<Record<string, unknown>>;
}

/** The site of a demo enquiry, which copies it in its first version. */
export function writeDemoSite(tx: DbOrTx, { at, customerId, facts }: DemoPlace) {
  const place = factsOfPlace(facts);
  const id = insertSite(tx, {
    customer_id: customerId,
    name: String(place.name),
    address: '',
    access_note: '',
    facts_json: JSON.stringify(place),
    created_at: at,
    updated_at: at,
  });
  return { site_id: id, site_version: 1 };
}
