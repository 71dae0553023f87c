/*
 * The Desk and orders that came without it: what waits, taking over, sending back, new links and withdrawn ones.
 * Invariant: the secret of a new link is answered once, to the person who made it.
 * Not here: what the owner of a link may do (open-link.ts).
 * Read next: order-stage.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findPlaceholder } from '#db/queries/customers.ts';
import { changeEnquiry as changeRow, findEnquiry } from '#db/queries/enquiries.ts';
import { listQuotes } from '#db/queries/quotes.ts';
import {
  changeSelfOrder,
  findSelfOrder,
  linksOfOrder,
  prolongLinks,
  type SelfOrderRow,
  type WaitingOrder,
  waitingOrders,
  withdrawLinks,
} from '#db/queries/self-orders.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { NOTHING_AGREED, writeCustomer } from '#lib/services/customers/save-customer.ts';
import { logChange } from '#lib/services/log-change.ts';
import { listIssuedQuotes } from '#lib/services/quotes/list-issued-quotes.ts';
import { reasonWords } from '#lib/wording/reason-words.ts';
import { type LinkAsk, listAskedByLink } from './answer-wish.ts';
import type { TaggedReason } from './hand-over-order.ts';
import { linkEnds } from './link-days.ts';
import { type OrderStage, stageOf } from './order-stage.ts';
import { writeLink } from './start-order.ts';

const SHOWN = 20;

export interface SelfOrderView {
  readonly stage: OrderStage;
  readonly stageAt: string;
  readonly language: string;
  readonly contact: Readonly<Record<string, string>>;
  readonly takenBy: string;
  readonly fromEnquiryId: number | null;
  /** Why it was handed over. */
  readonly reasons: readonly { readonly tag: string; readonly sentence: string }[];
  readonly asks: readonly LinkAsk[];
  readonly quote: { readonly name: string; readonly standing: string } | null;
  readonly links: readonly {
    readonly id: number;
    readonly scope: string;
    readonly expiresAt: string;
    readonly withdrawnAt: string;
    readonly lastUsedAt: string;
  }[];
}

/** What came without the Desk and nobody has taken over yet. */
export function listWaitingOrders(context: Context): Result<readonly WaitingOrder[]> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  return ok(waitingOrders(context.database.db, { most: SHOWN, since: waitingSince(context) }));
}

/** What was quoted or cancelled without the Desk is news for two weeks. House practice, no source. */
export function waitingSince(context: Context): string {
  return new Date(context.now().getTime() - 14 * 86_400_000).toISOString();
}

/** Null where the enquiry did not come by self-service. */
export function openSelfOrder(context: Context, enquiryId: number): Result<SelfOrderView | null> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const order = findSelfOrder(context.database.db, enquiryId);
  if (order === undefined) return ok(null);
  const asks = listAskedByLink(context);
  if (!asks.ok) return asks;
  const [quote] = listIssuedQuotes(context, enquiryId);
  const reasons = JSON.parse(order.reasons_json) as readonly TaggedReason[];
  return ok({
    reasons: reasons.map((reason) => ({ tag: reason.tag, sentence: reasonWords('en', reason) })),
    asks: asks.value.filter((ask) => ask.enquiryId === enquiryId),
    quote: quote === undefined ? null : { name: `${quote.number} ${quote.revision}`, standing: quote.standing.kind },
    stage: stageOf(order),
    stageAt: order.stage_at,
    language: order.language,
    contact: JSON.parse(order.contact_json) as Readonly<Record<string, string>>,
    takenBy: order.taken_name,
    fromEnquiryId: order.from_enquiry_id,
    links: linksOfOrder(context.database.db, enquiryId).map((link) => ({
      id: link.id,
      scope: link.scope,
      expiresAt: link.expires_at,
      withdrawnAt: link.withdrawn_at,
      lastUsedAt: link.last_used_at,
    })),
  });
}

/** From now on the owner of the link may look, and the Desk works on it. */
export function takeOverOrder(context: Context, enquiryId: number): Result<true> {
  const found = toChange(context, enquiryId);
  if (!found.ok) return found;
  const person = actingPerson(context);
  return context.database.db.transaction((tx) => {
    changeSelfOrder(tx, { enquiryId, set: { taken_by: person.id, taken_name: person.name } });
    changeRow(tx, {
      id: enquiryId,
      at: timestamp(context),
      set: { assigned_to: person.id, assigned_name: person.name, ...ownCustomer(tx, { context, enquiryId }) },
    });
    logChange(tx, {
      context,
      deed: { action: 'self-service: taken over', subject: `enquiry ${enquiryId}`, detail: {} },
    });
    return ok(true as const);
  });
}

/** What nobody has put a name to gets a customer of its own, for the Desk to name. */
function ownCustomer(
  tx: DbOrTx,
  { context, enquiryId }: { readonly context: Context; readonly enquiryId: number },
): { readonly customer_id?: number } {
  const row = findEnquiry(tx, enquiryId);
  if (row === undefined || row.customer_id !== findPlaceholder(tx)?.id) return {};
  const entry = { name: `Self-service, ${row.number}`, facts: NOTHING_AGREED };
  return { customer_id: writeCustomer(tx, { context, entry }).id };
}

/** The owner may go on: with the quote that stands where there is one, otherwise with the draft as the Desk left it. */
export function sendBackOrder(context: Context, enquiryId: number): Result<{ readonly token: string }> {
  const found = toChange(context, enquiryId);
  if (!found.ok) return found;
  const { db } = context.database;
  const isQuoted = listQuotes(db, enquiryId).length > 0;
  const stage = stageOf(found.value) === 'accepted' ? 'accepted' : isQuoted ? 'quoted' : 'draft';
  return db.transaction((tx) => {
    changeSelfOrder(tx, {
      enquiryId,
      set: { taken_by: '', taken_name: '', stage, stage_at: timestamp(context) },
    });
    prolongLinks(tx, { enquiryId, now: timestamp(context), until: linkEnds(context) });
    logChange(tx, {
      context,
      deed: { action: 'self-service: sent back', subject: `enquiry ${enquiryId}`, detail: {} },
    });
    return ok({ token: writeLink(tx, { context, enquiryId, scope: 'order' }) });
  });
}

export function withdrawOrderLinks(context: Context, enquiryId: number): Result<{ readonly withdrawn: number }> {
  const found = toChange(context, enquiryId);
  if (!found.ok) return found;
  return context.database.db.transaction((tx) => {
    const withdrawn = withdrawLinks(tx, { enquiryId, at: timestamp(context) });
    logChange(tx, {
      context,
      deed: { action: 'self-service: links withdrawn', subject: `enquiry ${enquiryId}`, detail: {} },
    });
    return ok({ withdrawn });
  });
}

function toChange(context: Context, enquiryId: number): Result<SelfOrderRow> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const order = findSelfOrder(context.database.db, enquiryId);
  if (order !== undefined) return ok(order);
  return failed({ code: 'no-such-order', sentence: 'That enquiry did not come by self-service.' });
}
