/*
 * Opens an order by its link: finds it by the hash of the secret, and gives its owner what they may do.
 * Invariant: whoever has no valid link learns nothing, not even whether there was one; each link opens one order.
 * Not here: links by which the Desk comes in; the Desk signs in.
 * Read next: order-stage.ts, secret.ts.
 */
import { bookingsOfEnquiry } from '#db/queries/bookings.ts';
import {
  findOrderLink,
  findSelfOrder,
  markLinkUsed,
  type OrderLinkRow,
  type SelfOrderRow,
} from '#db/queries/self-orders.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { type EnquiryRecord, readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { isKey, openKey } from './open-key.ts';
import { mayChange } from './order-stage.ts';
import { isSecret, secretHash } from './secret.ts';
import { mayTurn, takeTurn } from './self-throttle.ts';

export interface LinkAsked {
  readonly token: string;
  /** Where the request came from; only its turns are counted. */
  readonly address: string;
  /** With a key in the place of a link: which of its customer's orders. */
  readonly enquiryId?: number;
}

export interface OpenOrder {
  readonly link: Pick<OrderLinkRow, 'id' | 'scope' | 'expires_at'>;
  readonly order: SelfOrderRow;
  readonly enquiry: EnquiryRecord;
  /** The house acting for the owner of the link, in the log by the number of the enquiry. */
  readonly desk: Context;
}

/** By which way an order's owner came, as the records of what they did tell it. */
export function wayIn({ link }: Pick<OpenOrder, 'link'>): string {
  return link.id < 0 ? 'by a program of the customer' : 'through the link of the order';
}

export function openOrder(context: Context, asked: LinkAsked): Result<OpenOrder> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  if (isKey(asked.token)) return openByKey(context, asked);
  const { token, address } = asked;
  const wrong = { turn: 'open a wrong link', who: address } as const;
  const free = mayTurn(context, wrong);
  if (!free.ok) return free;
  const { db } = context.database;
  const link = isSecret(token) ? findOrderLink(db, secretHash(token)) : undefined;
  const order = link === undefined ? undefined : findSelfOrder(db, link.enquiry_id);
  if (link === undefined || order === undefined) {
    takeTurn(context, wrong);
    return failed({
      code: 'no-such-link',
      sentence: 'This link leads nowhere. Look at the one you were given, or start anew.',
    });
  }
  const now = timestamp(context);
  if (link.withdrawn_at !== '')
    return failed({ code: 'link-withdrawn', sentence: 'This link was withdrawn. Ask the house for a new one.' });
  if (link.expires_at <= now)
    return failed({
      code: 'link-expired',
      sentence: 'This link has expired. Ask the house for a new one, or start anew.',
    });
  const desk = houseFor(context, link.enquiry_id);
  const enquiry = readEnquiry(desk, link.enquiry_id);
  if (!enquiry.ok) return enquiry;
  if (now.slice(0, 16) !== link.last_used_at.slice(0, 16)) markLinkUsed(db, { id: link.id, at: now });
  return ok({ link, order: asItStands(context, order), enquiry: enquiry.value, desk });
}

/** An order whose booking lapsed or was cancelled by the house is a quoted one again, so that its owner can go on. */
function asItStands({ database: { db } }: Context, order: SelfOrderRow): SelfOrderRow {
  const isOpenAgain = order.stage === 'accepted' && bookingsOfEnquiry(db, order.enquiry_id).length === 0;
  return isOpenAgain ? { ...order, stage: 'quoted' } : order;
}

/** A key opens the orders that keys of the same customer made; of all others it learns nothing. */
function openByKey(context: Context, asked: LinkAsked): Result<OpenOrder> {
  const key = openKey(context, asked);
  if (!key.ok) return key;
  const enquiryId = asked.enquiryId ?? 0;
  const order = findSelfOrder(context.database.db, enquiryId);
  const desk = houseFor(context, enquiryId);
  const enquiry = order === undefined ? undefined : readEnquiry(desk, enquiryId);
  if (order === undefined || order.by_key_id === null || enquiry?.ok !== true) return noSuchOrder();
  if (enquiry.value.row.customer_id !== key.value.customer_id) return noSuchOrder();
  // Keys count below zero, so that their turns are never those of a link.
  const link = { id: -key.value.id, scope: 'order', expires_at: FOR_EVER };
  return ok({ link, order: asItStands(context, order), enquiry: enquiry.value, desk });
}

/** A key holds until it is revoked. */
const FOR_EVER = '9999-12-31T00:00:00.000Z';

function noSuchOrder(): Result<never> {
  return failed({ code: 'no-such-order', sentence: 'There is no such order of this customer.' });
}

/** The same, to change the order: counted by link, and refused where only looking is allowed or the Desk has it. */
export function openToChange(context: Context, asked: LinkAsked): Result<OpenOrder> {
  const opened = openToAct(context, asked);
  if (!opened.ok) return opened;
  const may = mayChange(opened.value.order);
  return may.ok ? opened : may;
}

/** To accept or cancel: whoever may only look may not. */
export function openToAct(context: Context, asked: LinkAsked): Result<OpenOrder> {
  const opened = openOrder(context, asked);
  if (!opened.ok) return opened;
  if (opened.value.link.scope !== 'order')
    return failed({ code: 'link-only-looks', sentence: 'This link is for looking only.' });
  const turn = takeTurn(context, { turn: 'work on an order', who: `link ${opened.value.link.id}` });
  return turn.ok ? opened : turn;
}

/** Under this id stands in every record what owners of links did. */
export const SELF_SERVICE_ACTOR = 'self-service';

/** What is done for a stranger is done by the house, under a name that tells which order it was. */
export function houseFor(context: Context, enquiryId: number): Context {
  return { ...context, actor: { id: SELF_SERVICE_ACTOR, name: `Self-service, enquiry ${enquiryId}`, role: 'desk' } };
}
