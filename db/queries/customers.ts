/*
 * Reads and writes customers.
 * Invariant: lists come in order of name and leave the placeholder of strangers out; a change with a version that is no longer the newest changes nothing.
 * Not here: sites and contacts (places.ts); terms and prices.
 * Read next: ../schema/customer.ts.
 */
import { and, asc, eq, isNotNull, isNull, type SQL, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { customer } from '../schema/customer.ts';

export type CustomerRow = typeof customer.$inferSelect;

export function listCustomers(db: DbOrTx): readonly CustomerRow[] {
  return db.select().from(customer).where(isSomebody()).orderBy(asc(customer.name)).all();
}

export interface ReachableCustomer {
  readonly id: number;
  readonly name: string;
  readonly archived_at: string | null;
  readonly email: string;
  readonly telephone: string;
}

/** What finding who is here already compares, without reading all that is known of thousands. */
export function reachableCustomers(db: DbOrTx): readonly ReachableCustomer[] {
  return db
    .select({
      id: customer.id,
      name: customer.name,
      archived_at: customer.archived_at,
      email: sql<string>`coalesce(json_extract(${customer.facts_json}, '$.email'), '')`,
      telephone: sql<string>`coalesce(json_extract(${customer.facts_json}, '$.telephone'), '')`,
    })
    .from(customer)
    .where(isSomebody())
    .orderBy(asc(customer.name))
    .all();
}

export function findCustomer(db: DbOrTx, id: number): CustomerRow | undefined {
  return db.select().from(customer).where(eq(customer.id, id)).get();
}

type NewCustomerRow = Pick<CustomerRow, 'code' | 'name' | 'facts_json' | 'created_at' | 'updated_at'>;

export function insertCustomer(db: DbOrTx, row: NewCustomerRow): number {
  return Number(db.insert(customer).values(row).returning({ id: customer.id }).get().id);
}

interface CustomerChange {
  readonly id: number;
  readonly at: string;
  readonly set: Partial<Pick<CustomerRow, 'name' | 'facts_json' | 'archived_at' | 'placeholder'>>;
  /** Nothing is changed when the row has another one. */
  readonly version?: number;
}

export function changeCustomer(db: DbOrTx, { id, at, set, version }: CustomerChange): boolean {
  const same = version === undefined ? undefined : eq(customer.version, version);
  const done = db
    .update(customer)
    .set({ ...set, updated_at: at, version: sql`${customer.version} + 1` })
    .where(and(eq(customer.id, id), same))
    .run();
  return done.changes === 1;
}

export interface CustomerAsked {
  /** Ids that a search found; null for all. */
  readonly ids: readonly number[] | null;
  readonly archived: 'yes' | 'no';
  readonly from: number;
  readonly count: number;
}

export interface CustomerListRow {
  readonly id: number;
  readonly code: string;
  readonly name: string;
  readonly facts_json: string;
  readonly sites: number;
  readonly contacts: number;
  readonly enquiries: number;
  readonly open_enquiries: number;
}

export function pageOfCustomers(db: DbOrTx, asked: CustomerAsked): readonly CustomerListRow[] {
  return db
    .select({
      id: customer.id,
      code: customer.code,
      name: customer.name,
      facts_json: customer.facts_json,
      // With the tables named: alone in a query, a column is written without its table.
      sites: sql<number>`(SELECT count(*) FROM site WHERE site.customer_id = customer.id AND site.archived_at IS NULL)`,
      contacts: sql<number>`(SELECT count(*) FROM contact WHERE contact.customer_id = customer.id AND contact.archived_at IS NULL)`,
      enquiries: sql<number>`(SELECT count(*) FROM enquiry WHERE enquiry.customer_id = customer.id)`,
      open_enquiries: sql<number>`(SELECT count(*) FROM enquiry WHERE enquiry.customer_id = customer.id AND enquiry.state IN ('new', 'being worked', 'quoted'))`,
    })
    .from(customer)
    .where(wanted(asked))
    .orderBy(asc(sql`${customer.name} COLLATE NOCASE`), asc(customer.id))
    .limit(asked.count)
    .offset(asked.from)
    .all();
}

export function countCustomers(db: DbOrTx, asked: Pick<CustomerAsked, 'ids' | 'archived'>): number {
  return db.select({ count: sql<number>`count(*)` }).from(customer).where(wanted(asked)).get()?.count ?? 0;
}

function wanted({ ids, archived }: Pick<CustomerAsked, 'ids' | 'archived'>): SQL | undefined {
  const put = and(isSomebody(), archived === 'yes' ? isNotNull(customer.archived_at) : isNull(customer.archived_at));
  return ids === null ? put : and(put, sql`${customer.id} IN (SELECT value FROM json_each(${JSON.stringify(ids)}))`);
}

export function findCustomerByName(db: DbOrTx, name: string): CustomerRow | undefined {
  return db
    .select()
    .from(customer)
    .where(and(eq(customer.name, name), isSomebody()))
    .get();
}

/** The one under which strangers' orders stand until they say who they are. */
export function findPlaceholder(db: DbOrTx): CustomerRow | undefined {
  return db.select().from(customer).where(eq(customer.placeholder, true)).get();
}

function isSomebody(): SQL {
  return eq(customer.placeholder, false);
}
