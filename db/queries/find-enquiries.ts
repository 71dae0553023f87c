/*
 * Finds enquiries by what a list is filtered by, a page at a time, and counts them by state.
 * Invariant: the state is the one of the day asked: quoted past its last day reads as lapsed, whoever looks.
 * Not here: one enquiry (enquiries.ts); the index of the search (search.ts).
 * Read next: ../schema/enquiry.ts.
 */
import { and, asc, desc, eq, inArray, type SQL, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { customer } from '../schema/customer.ts';
import { enquiry } from '../schema/enquiry.ts';
import { quote } from '../schema/quote.ts';
import { scheduleLine } from '../schema/schedule-line.ts';
import { selfOrder } from '../schema/self-order.ts';

export interface EnquiryFilter {
  readonly today: string;
  /** Enquiries that strangers began and never sent. */
  readonly drafts: 'left out' | 'only';
  readonly states: readonly string[];
  /** Id of a person; empty for nobody’s; null for anybody’s. */
  readonly assignedTo: string | null;
  readonly customerId: number | null;
  readonly siteId: number | null;
  /** Due before, or on no day at all. */
  readonly due: { readonly before: string } | 'none' | null;
  /** Ids of enquiries and of customers that hold the words asked; null where none are. */
  readonly found: { readonly enquiries: readonly number[]; readonly customers: readonly number[] } | null;
}

export type EnquiryOrder = 'changed' | 'due' | 'number' | 'customer' | 'title' | 'state' | 'assigned';

export interface EnquiryPage {
  readonly order: EnquiryOrder;
  readonly way: 'up' | 'down';
  readonly from: number;
  readonly count: number;
}

export interface FoundEnquiry {
  readonly id: number;
  readonly number: string;
  readonly title: string;
  readonly state: string;
  readonly customerId: number;
  readonly customer: string;
  readonly reference: string;
  readonly assigned: string;
  readonly due_on: string | null;
  /** How far it came by self-service; null where the Desk opened it. */
  readonly self_service: string | null;
  readonly lines: number;
  readonly updated_at: string;
}

export function findEnquiries(
  db: DbOrTx,
  { filter, page }: { readonly filter: EnquiryFilter; readonly page: EnquiryPage },
): readonly FoundEnquiry[] {
  return db
    .select({
      id: enquiry.id,
      number: enquiry.number,
      title: enquiry.title,
      state: stateOn(filter.today),
      customerId: enquiry.customer_id,
      customer: customer.name,
      reference: enquiry.reference,
      assigned: enquiry.assigned_name,
      due_on: enquiry.due_on,
      self_service: sql<
        string | null
      >`(SELECT ${selfOrder.stage} FROM ${selfOrder} WHERE ${selfOrder.enquiry_id} = ${enquiry.id})`,
      lines: sql<number>`(SELECT count(*) FROM ${scheduleLine} WHERE ${scheduleLine.enquiry_id} = ${enquiry.id})`,
      updated_at: enquiry.updated_at,
    })
    .from(enquiry)
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(wanted(filter))
    .orderBy(...ordered(filter.today, page))
    .limit(page.count)
    .offset(page.from)
    .all();
}

/** How many there are in each state, whatever states are asked for. */
export function countEnquiries(db: DbOrTx, filter: EnquiryFilter): Readonly<Record<string, number>> {
  const state = stateOn(filter.today);
  const rows = db
    .select({ state, count: sql<number>`count(*)` })
    .from(enquiry)
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(wanted({ ...filter, states: [] }))
    .groupBy(state)
    .all();
  return Object.fromEntries(rows.map((row) => [row.state, row.count]));
}

function stateOn(today: string): SQL<string> {
  return sql<string>`CASE WHEN ${enquiry.state} = 'quoted' AND (SELECT ${quote.valid_until} FROM ${quote}
    WHERE ${quote.enquiry_id} = ${enquiry.id} ORDER BY ${quote.id} DESC LIMIT 1) < ${today} THEN 'lapsed' ELSE ${enquiry.state} END`;
}

function wanted({ today, drafts, states, assignedTo, customerId, siteId, due, found }: EnquiryFilter): SQL | undefined {
  return and(
    drafts === 'only' ? isDraft() : notDraft(),
    states.length === 0 ? undefined : inArray(stateOn(today), [...states]),
    assignedTo === null ? undefined : eq(enquiry.assigned_to, assignedTo),
    customerId === null ? undefined : eq(enquiry.customer_id, customerId),
    siteId === null ? undefined : eq(enquiry.site_id, siteId),
    due === null ? undefined : due === 'none' ? sql`${enquiry.due_on} IS NULL` : sql`${enquiry.due_on} < ${due.before}`,
    found === null
      ? undefined
      : sql`(${enquiry.id} IN (SELECT value FROM json_each(${JSON.stringify(found.enquiries)}))
          OR ${enquiry.customer_id} IN (SELECT value FROM json_each(${JSON.stringify(found.customers)})))`,
  );
}

/** What somebody is still filling in without the Desk, and has not said who they are, is nobody's work yet. */
export function notDraft(): SQL {
  return sql`NOT ${isDraft()}`;
}

function isDraft(): SQL {
  return sql`EXISTS (SELECT 1 FROM ${selfOrder} WHERE ${selfOrder.enquiry_id} = ${enquiry.id} AND ${neverSent()})`;
}

/** Of a row of `self_order`. */
export function neverSent(): SQL {
  return sql`${selfOrder.stage} = 'draft' AND ${selfOrder.contact_json} = '{}' AND ${selfOrder.taken_by} = ''`;
}

function ordered(...[today, { order, way }]: readonly [string, EnquiryPage]): SQL[] {
  const columns: Readonly<Record<EnquiryOrder, SQL>> = {
    changed: sql`${enquiry.updated_at}`,
    due: sql`${enquiry.due_on}`,
    number: sql`${enquiry.id}`,
    customer: sql`${customer.name} COLLATE NOCASE`,
    title: sql`${enquiry.title} COLLATE NOCASE`,
    state: stateOn(today),
    assigned: sql`${enquiry.assigned_name} COLLATE NOCASE`,
  };
  const turned = way === 'up' ? asc : desc;
  // What has no due day comes last either way.
  const open = order === 'due' ? [sql`${enquiry.due_on} IS NULL`] : [];
  return [...open, turned(columns[order]), desc(enquiry.id)];
}
