/*
 * Reads and writes the sites and contacts of customers.
 * Invariant: lists come in order of name; a change with a version that is no longer the newest changes nothing.
 * Not here: the copy of a site's facts that an enquiry keeps (enquiries.ts).
 * Read next: ../schema/site.ts, ../schema/contact.ts.
 */
import { and, asc, eq, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { contact } from '../schema/contact.ts';
import { enquiry } from '../schema/enquiry.ts';
import { site } from '../schema/site.ts';

export type SiteRow = typeof site.$inferSelect;
export type ContactRow = typeof contact.$inferSelect;

export function sitesOf(db: DbOrTx, customerId: number): readonly SiteRow[] {
  return db.select().from(site).where(eq(site.customer_id, customerId)).orderBy(asc(site.name)).all();
}

export function findSite(db: DbOrTx, id: number): SiteRow | undefined {
  return db.select().from(site).where(eq(site.id, id)).get();
}

export function insertSite(db: DbOrTx, row: Omit<SiteRow, 'id' | 'version' | 'archived_at'>): number {
  return Number(db.insert(site).values(row).returning({ id: site.id }).get().id);
}

interface Change<Row> {
  readonly id: number;
  readonly at: string;
  readonly set: Partial<Omit<Row, 'id' | 'version' | 'created_at' | 'updated_at'>>;
  readonly version?: number;
}

export function changeSite(db: DbOrTx, { id, at, set, version }: Change<SiteRow>): boolean {
  const same = version === undefined ? undefined : eq(site.version, version);
  const done = db
    .update(site)
    .set({ ...set, updated_at: at, version: sql`${site.version} + 1` })
    .where(and(eq(site.id, id), same))
    .run();
  return done.changes === 1;
}

/** How many enquiries copied each site of a customer. */
export function enquiriesBySite(db: DbOrTx, customerId: number): ReadonlyMap<number, number> {
  const rows = db
    .select({ id: enquiry.site_id, count: sql<number>`count(*)` })
    .from(enquiry)
    .where(eq(enquiry.customer_id, customerId))
    .groupBy(enquiry.site_id)
    .all();
  return new Map(rows.flatMap(({ id, count }) => (id === null ? [] : [[id, count] as const])));
}

export function contactsOf(db: DbOrTx, customerId: number): readonly ContactRow[] {
  return db.select().from(contact).where(eq(contact.customer_id, customerId)).orderBy(asc(contact.name)).all();
}

export function findContact(db: DbOrTx, id: number): ContactRow | undefined {
  return db.select().from(contact).where(eq(contact.id, id)).get();
}

export function insertContact(db: DbOrTx, row: Omit<ContactRow, 'id' | 'version' | 'archived_at'>): number {
  return Number(db.insert(contact).values(row).returning({ id: contact.id }).get().id);
}

export function changeContact(db: DbOrTx, { id, at, set, version }: Change<ContactRow>): boolean {
  const same = version === undefined ? undefined : eq(contact.version, version);
  const done = db
    .update(contact)
    .set({ ...set, updated_at: at, version: sql`${contact.version} + 1` })
    .where(and(eq(contact.id, id), same))
    .run();
  return done.changes === 1;
}

/** Addresses of mail and telephone numbers of every contact, for finding who is here already. */
export function allReachable(
  db: DbOrTx,
): readonly Pick<ContactRow, 'id' | 'customer_id' | 'name' | 'email' | 'telephone' | 'archived_at'>[] {
  return db
    .select({
      id: contact.id,
      customer_id: contact.customer_id,
      name: contact.name,
      email: contact.email,
      telephone: contact.telephone,
      archived_at: contact.archived_at,
    })
    .from(contact)
    .all();
}
