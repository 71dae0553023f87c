/*
 * Reads and writes orders made without the Desk: their links, how far they came, and what was said of their lines.
 * Invariant: a link is found by the hash of its secret only.
 * Not here: what a stage allows (lib/services/self-service/order-stage.ts).
 * Read next: ../schema/self-order.ts.
 */
import { and, desc, eq, gt, inArray, lt, or, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { customer } from '../schema/customer.ts';
import { enquiry } from '../schema/enquiry.ts';
import { lineAnswer } from '../schema/line-answer.ts';
import { orderLink } from '../schema/order-link.ts';
import { quote } from '../schema/quote.ts';
import { scheduleLine } from '../schema/schedule-line.ts';
import { selfOrder } from '../schema/self-order.ts';
import { neverSent } from './find-enquiries.ts';

export type OrderLinkRow = typeof orderLink.$inferSelect;
export type SelfOrderRow = typeof selfOrder.$inferSelect;
export type LineAnswerRow = typeof lineAnswer.$inferSelect;

export function insertOrderLink(db: DbOrTx, row: Omit<typeof orderLink.$inferInsert, 'id'>): number {
  return db.insert(orderLink).values(row).returning({ id: orderLink.id }).get().id;
}

export function findOrderLink(db: DbOrTx, tokenHash: string): OrderLinkRow | undefined {
  return db.select().from(orderLink).where(eq(orderLink.token_hash, tokenHash)).get();
}

export function linksOfOrder(db: DbOrTx, enquiryId: number): readonly OrderLinkRow[] {
  return db.select().from(orderLink).where(eq(orderLink.enquiry_id, enquiryId)).orderBy(desc(orderLink.id)).all();
}

export function markLinkUsed(db: DbOrTx, { id, at }: { readonly id: number; readonly at: string }): void {
  db.update(orderLink).set({ last_used_at: at }).where(eq(orderLink.id, id)).run();
}

/** Every link of the order stops opening it. */
export function withdrawLinks(
  db: DbOrTx,
  { enquiryId, at }: { readonly enquiryId: number; readonly at: string },
): number {
  return db
    .update(orderLink)
    .set({ withdrawn_at: at })
    .where(and(eq(orderLink.enquiry_id, enquiryId), eq(orderLink.withdrawn_at, '')))
    .run().changes;
}

/** Links that still open the order do so until that moment at least. */
export function prolongLinks(
  db: DbOrTx,
  { enquiryId, now, until }: { readonly enquiryId: number; readonly now: string; readonly until: string },
): void {
  db.update(orderLink)
    .set({ expires_at: until })
    .where(
      and(
        eq(orderLink.enquiry_id, enquiryId),
        eq(orderLink.withdrawn_at, ''),
        gt(orderLink.expires_at, now),
        lt(orderLink.expires_at, until),
      ),
    )
    .run();
}

export function insertSelfOrder(db: DbOrTx, row: typeof selfOrder.$inferInsert): void {
  db.insert(selfOrder).values(row).run();
}

export function findSelfOrder(db: DbOrTx, enquiryId: number): SelfOrderRow | undefined {
  return db.select().from(selfOrder).where(eq(selfOrder.enquiry_id, enquiryId)).get();
}

interface Outdated {
  /** No link of it opened it after this moment. */
  readonly linksEndedBefore: string;
  /** Those without a link, made by programs, that were begun before. */
  readonly begunBefore: string;
}

/** Drafts that were never sent and that nobody can open any more. */
export function outdatedDrafts(db: DbOrTx, { linksEndedBefore, begunBefore }: Outdated): readonly number[] {
  const links = sql`FROM ${orderLink} WHERE ${orderLink.enquiry_id} = ${selfOrder.enquiry_id}`;
  return db
    .select({ id: selfOrder.enquiry_id })
    .from(selfOrder)
    .where(
      and(
        neverSent(),
        lt(selfOrder.created_at, begunBefore),
        sql`NOT EXISTS (SELECT 1 ${links} AND ${orderLink.expires_at} >= ${linksEndedBefore})`,
        sql`NOT EXISTS (SELECT 1 FROM ${quote} WHERE ${quote.enquiry_id} = ${selfOrder.enquiry_id})`,
      ),
    )
    .all()
    .map(({ id }) => id);
}

/** With everything that hangs on it: lines, list, photos, plans, links. */
export function deleteDraft(db: DbOrTx, enquiryId: number): void {
  db.delete(enquiry).where(eq(enquiry.id, enquiryId)).run();
}

export interface OrderPart {
  readonly number: string;
  readonly order: SelfOrderRow;
}

/** What was handed over apart from an order. */
export function partsOfOrder(db: DbOrTx, enquiryId: number): readonly OrderPart[] {
  return db
    .select({ number: enquiry.number, order: selfOrder })
    .from(selfOrder)
    .innerJoin(enquiry, eq(enquiry.id, selfOrder.enquiry_id))
    .where(eq(selfOrder.from_enquiry_id, enquiryId))
    .orderBy(selfOrder.enquiry_id)
    .all();
}

export function changeSelfOrder(
  db: DbOrTx,
  { enquiryId, set }: { readonly enquiryId: number; readonly set: Partial<Omit<SelfOrderRow, 'enquiry_id'>> },
): void {
  db.update(selfOrder).set(set).where(eq(selfOrder.enquiry_id, enquiryId)).run();
}

export interface WaitingOrder {
  readonly enquiryId: number;
  readonly number: string;
  readonly title: string;
  readonly customer: string;
  readonly stage: string;
  readonly stageAt: string;
  readonly lines: number;
}

/** Ordered, and waits to be confirmed. */
function isHeld() {
  return sql`${selfOrder.stage} = 'accepted' AND EXISTS (SELECT 1 FROM ${booking} JOIN ${quote} ON ${quote.id} = ${booking.quote_id}
    WHERE ${quote.enquiry_id} = ${selfOrder.enquiry_id} AND ${booking.state} = 'held')`;
}

/** Quoted or cancelled not long ago. */
function isRecent(since: string) {
  return and(inArray(selfOrder.stage, ['quoted', 'cancelled']), gt(selfOrder.stage_at, since));
}

/** What came without the Desk, waits for it and nobody has taken over yet, the newest first. */
export function waitingOrders(
  db: DbOrTx,
  { most, since }: { readonly most: number; readonly since: string },
): readonly WaitingOrder[] {
  return db
    .select({
      enquiryId: enquiry.id,
      number: enquiry.number,
      title: enquiry.title,
      customer: customer.name,
      stage: selfOrder.stage,
      stageAt: selfOrder.stage_at,
      lines: sql<number>`(SELECT count(*) FROM ${scheduleLine} WHERE ${scheduleLine.enquiry_id} = ${enquiry.id})`,
    })
    .from(selfOrder)
    .innerJoin(enquiry, eq(enquiry.id, selfOrder.enquiry_id))
    .innerJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(and(eq(selfOrder.taken_by, ''), or(eq(selfOrder.stage, 'handed over'), isHeld(), isRecent(since))))
    .orderBy(desc(selfOrder.stage_at))
    .limit(most)
    .all();
}

export function lineAnswers(db: DbOrTx, enquiryId: number): ReadonlyMap<number, LineAnswerRow> {
  const rows = db
    .select({ answer: lineAnswer })
    .from(lineAnswer)
    .innerJoin(scheduleLine, eq(scheduleLine.id, lineAnswer.line_id))
    .where(eq(scheduleLine.enquiry_id, enquiryId))
    .all();
  return new Map(rows.map(({ answer }) => [answer.line_id, answer]));
}

export function writeLineAnswer(
  db: DbOrTx,
  { lineId, set }: { readonly lineId: number; readonly set: Partial<Pick<LineAnswerRow, 'unknown_json' | 'photo_id'>> },
): void {
  db.insert(lineAnswer)
    .values({ line_id: lineId, ...set })
    .onConflictDoUpdate({ target: lineAnswer.line_id, set })
    .run();
}
