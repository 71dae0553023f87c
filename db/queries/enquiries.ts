/*
 * Reads and writes enquiries.
 * Invariant: every change raises the version and moves updated_at.
 * Not here: lines and files (schedule.ts).
 * Read next: ../schema/enquiry.ts.
 */
import { and, desc, eq, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { customer } from '../schema/customer.ts';
import { enquiry } from '../schema/enquiry.ts';
import { scheduleLine } from '../schema/schedule-line.ts';
import { notDraft } from './find-enquiries.ts';

export type EnquiryRow = typeof enquiry.$inferSelect;

export interface EnquiryListRow {
  readonly id: number;
  readonly number: string;
  readonly title: string;
  readonly state: string;
  readonly customer: string;
  readonly lines: number;
  readonly updated_at: string;
}

export function listEnquiries(db: DbOrTx): readonly EnquiryListRow[] {
  return db
    .select({
      id: enquiry.id,
      number: enquiry.number,
      title: enquiry.title,
      state: enquiry.state,
      customer: customer.name,
      lines: sql<number>`(SELECT count(*) FROM ${scheduleLine} WHERE ${scheduleLine.enquiry_id} = ${enquiry.id})`,
      updated_at: enquiry.updated_at,
    })
    .from(enquiry)
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(notDraft())
    .orderBy(desc(enquiry.updated_at), desc(enquiry.id))
    .all();
}

export function findEnquiry(db: DbOrTx, id: number): EnquiryRow | undefined {
  return db.select().from(enquiry).where(eq(enquiry.id, id)).get();
}

type Defaulted =
  | 'site_id'
  | 'site_version'
  | 'contact_id'
  | 'assigned_to'
  | 'assigned_name'
  | 'due_on'
  | 'reference'
  | 'source';
type NewEnquiryRow = Omit<EnquiryRow, 'id' | 'version' | 'paper_units' | Defaulted> &
  Partial<Pick<EnquiryRow, 'paper_units' | Defaulted>>;

export function insertEnquiry(db: DbOrTx, row: NewEnquiryRow): number {
  return Number(db.insert(enquiry).values(row).returning({ id: enquiry.id }).get().id);
}

export type EnquiryChange = Partial<Omit<EnquiryRow, 'id' | 'number' | 'version' | 'created_at' | 'updated_at'>>;

/** Changes an enquiry; with a version it changes nothing when somebody else was first. Answers whether it did. */
export function changeEnquiry(
  db: DbOrTx,
  change: { readonly id: number; readonly at: string; readonly set: EnquiryChange; readonly version?: number },
): boolean {
  const where =
    change.version === undefined
      ? eq(enquiry.id, change.id)
      : and(eq(enquiry.id, change.id), eq(enquiry.version, change.version));
  const done = db
    .update(enquiry)
    .set({ ...change.set, updated_at: change.at, version: sql`${enquiry.version} + 1` })
    .where(where)
    .run();
  return done.changes === 1;
}

/** Everybody whose work an enquiry is. */
export function peopleWithWork(db: DbOrTx): readonly { readonly id: string; readonly name: string }[] {
  return db
    .select({ id: enquiry.assigned_to, name: sql<string>`max(${enquiry.assigned_name})` })
    .from(enquiry)
    .where(sql`${enquiry.assigned_to} <> ''`)
    .groupBy(enquiry.assigned_to)
    .all();
}
