/*
 * Opens what was handed over apart from an order, for whoever may act on the order it came from.
 * Invariant: only parts of this very order; each opening is a link of its own that can be withdrawn like any other.
 * Not here: handing over (hand-over-order.ts).
 * Read next: open-link.ts.
 */
import { partsOfOrder } from '#db/queries/self-orders.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { type LinkAsked, openToAct } from './open-link.ts';
import { writeLink } from './start-order.ts';

export function openPart(
  context: Context,
  { number, ...asked }: LinkAsked & { readonly number: string },
): Result<{ readonly token: string }> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToAct(context, asked);
  if (!opened.ok) return opened;
  const { db } = context.database;
  const part = partsOfOrder(db, opened.value.order.enquiry_id).find((one) => one.number === number);
  if (part === undefined)
    return failed({ code: 'no-such-order', sentence: 'That was not handed over apart from this order.' });
  return ok({
    token: db.transaction((tx) => writeLink(tx, { context, enquiryId: part.order.enquiry_id, scope: 'order' })),
  });
}
