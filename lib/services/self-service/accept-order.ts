/*
 * The word of an order's owner: accepts the quote once, or takes the acceptance back until a stated hour.
 * Invariant: however often it is pressed there is one booking; what went wrong with stock is told without counts.
 * Not here: choosing and holding units (../quotes/accept-quote.ts).
 * Read next: order-stage.ts, cancel-until.ts.
 */
import { bookingOfQuote } from '#db/queries/bookings.ts';
import { listQuotes } from '#db/queries/quotes.ts';
import { prolongLinks } from '#db/queries/self-orders.ts';
import type { OrderAcceptance } from '#lib/contracts/self-service.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { cancelAcceptance } from '#lib/services/quotes/cancel-acceptance.ts';
import { cancelUntil } from './cancel-until.ts';
import { linksOpenUntil } from './link-days.ts';
import { type LinkAsked, openToAct } from './open-link.ts';
import { quotesOfOrder } from './order-quotes.ts';
import { writeStage } from './order-record.ts';
import { stageOf } from './order-stage.ts';
import { selfServiceFacts } from './self-facts.ts';

export interface OrderAccepted {
  readonly booking: string;
  readonly held_until: string | null;
}

export function acceptOrder(
  context: Context,
  { acceptance, ...asked }: LinkAsked & { readonly acceptance: OrderAcceptance },
): Result<OrderAccepted> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToAct(context, asked);
  if (!opened.ok) return opened;
  const { order, desk } = opened.value;
  const { db } = context.database;
  const stands = quotesOfOrder(context, opened.value);
  if (order.taken_by !== '' && stands.quote?.standing !== 'accepted')
    return failed({ code: 'order-with-desk', sentence: 'The house is working on this order; ask there for a change.' });
  const quote = listQuotes(db, order.enquiry_id).find(
    ({ number, revision }) => `${number} ${revision}` === acceptance.quote,
  );
  if (quote === undefined || (stageOf(order) !== 'quoted' && stageOf(order) !== 'accepted'))
    return failed({ code: 'no-such-quote', sentence: 'That quote no longer stands: look at the order again.' });
  const accepted = acceptQuote(desk, {
    quoteId: quote.id,
    acceptedBy: acceptance.name,
    orderNumber: acceptance.order_number,
    heldHours: selfServiceFacts(context).hold_hours,
    ...(acceptance.option === undefined ? {} : { option: acceptance.option }),
  });
  if (!accepted.ok) return TOLD_AS_IT_IS.has(accepted.reason.code) ? accepted : taken();
  const { enquiry_id: enquiryId } = order;
  if (stageOf(order) !== 'accepted')
    db.transaction((tx) => writeStage(tx, { context: desk, enquiryId, stage: 'accepted' }));
  const until = linksOpenUntil(context, rangeOfDays(quote.starts_on, quote.days).ends_before);
  prolongLinks(db, { enquiryId, now: timestamp(context), until });
  return ok({ booking: accepted.value.number, held_until: bookingOfQuote(db, quote.id)?.held_until ?? null });
}

/** Refusals that speak of the quote and its dates. All others speak of stock. */
const TOLD_AS_IT_IS: ReadonlySet<string> = new Set([
  'accepted-already',
  'quote-superseded',
  'quote-lapsed',
  'quote-declined',
  'quote-withdrawn',
  'dates-past',
  'option-missing',
]);

function taken(): Result<never> {
  return failed({
    code: 'equipment-taken',
    sentence:
      'Some of the equipment was ordered by somebody else meanwhile, so nothing was booked. Choose other dates, or hand the order over to the house.',
  });
}

export function cancelOrder(
  context: Context,
  { reason, ...asked }: LinkAsked & { readonly reason: string },
): Result<{ readonly booking: string }> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToAct(context, asked);
  if (!opened.ok) return opened;
  const { order, desk } = opened.value;
  const { db } = context.database;
  const quote = listQuotes(db, order.enquiry_id).find(({ id }) => bookingOfQuote(db, id) !== undefined);
  if (quote === undefined) return failed({ code: 'no-such-booking', sentence: 'Nothing is booked for this order.' });
  if (timestamp(context) >= cancelUntil(context, quote.starts_on))
    return failed({
      code: 'too-late-to-cancel',
      sentence: 'It is too late to cancel here, because the equipment is being made ready. Telephone the house.',
    });
  const cancelled = cancelAcceptance(desk, {
    quoteId: quote.id,
    reason: reason.trim() === '' ? 'Cancelled by the customer.' : reason,
  });
  if (!cancelled.ok)
    return failed({
      code: 'too-late-to-cancel',
      sentence:
        'This cannot be cancelled here any more, because the equipment is being made ready. Telephone the house.',
    });
  db.transaction((tx) => writeStage(tx, { context: desk, enquiryId: order.enquiry_id, stage: 'cancelled' }));
  return ok({ booking: cancelled.value.number });
}
