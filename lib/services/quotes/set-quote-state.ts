/*
 * Moves an issued quote: declined by the customer, withdrawn by the house, or open again.
 * Invariant: what was issued stays as it is; only its state moves, with the reason, who and when.
 * Not here: accepting (accept-quote.ts), cancelling an acceptance (cancel-acceptance.ts), lapsing and superseding, which follow by themselves.
 * Read next: quote-standing.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { bookingsOfEnquiry } from '#db/queries/bookings.ts';
import { changeEnquiry as changeRow } from '#db/queries/enquiries.ts';
import { changeQuoteState, findQuote, listQuotes } from '#db/queries/quotes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { moveByDeed } from '#lib/services/enquiries/move-enquiry.ts';
import { type QuoteStanding, quoteStanding } from './quote-standing.ts';

export const QUOTE_MOVES = ['declined', 'withdrawn', 'issued'] as const;
export type QuoteMove = (typeof QUOTE_MOVES)[number];

export interface QuoteMoving {
  readonly quoteId: number;
  readonly to: QuoteMove;
  readonly reason: string;
}

export function setQuoteState(context: Context, moving: QuoteMoving): Result<true> {
  const allowed = authorise(context, 'issue quotes');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => move(tx, { context, moving }), { behavior: 'immediate' });
}

function move(
  tx: DbOrTx,
  { context, moving }: { readonly context: Context; readonly moving: QuoteMoving },
): Result<true> {
  const quote = findQuote(tx, moving.quoteId);
  if (!quote) return NO_SUCH_QUOTE;
  const standing = quoteStanding({
    quote,
    quotes: listQuotes(tx, quote.enquiry_id),
    bookings: bookingsOfEnquiry(tx, quote.enquiry_id),
    today: today(context),
  });
  const may = mayMove(standing.kind, moving);
  if (!may.ok) return may;
  const at = timestamp(context);
  const reason = moving.reason.trim();
  changeQuoteState(tx, { id: quote.id, state: moving.to, reason, by: context.actor.name, at });
  changeRow(tx, { id: quote.enquiry_id, at, set: {} });
  const isDeclined = moving.to === 'declined';
  moveByDeed(tx, {
    ...{ context, enquiryId: quote.enquiry_id, why: reason },
    by: isDeclined ? 'quote declined' : 'quote issued',
    to: isDeclined ? 'declined' : 'quoted',
  });
  addAuditEntry(tx, {
    at,
    who: context.actor,
    action: moving.to === 'issued' ? 'quote opened again' : `quote ${moving.to}`,
    subject: `enquiry ${quote.enquiry_id}`,
    detail_json: JSON.stringify({ number: `${quote.number} ${quote.revision}`, reason }),
  });
  return ok(true);
}

function mayMove(kind: QuoteStanding['kind'], { to, reason }: QuoteMoving): Result<true> {
  const isAside = kind === 'declined' || kind === 'withdrawn';
  if (to === 'issued' ? !isAside : kind !== 'open' && kind !== 'lapsed') {
    return failed({
      code: 'quote-not-open',
      sentence: `The quote is ${kind === 'open' ? 'open already' : kind}, so that it cannot be ${to === 'issued' ? 'opened again' : to}.`,
    });
  }
  if (to !== 'issued' && reason.trim() === '')
    return failed({ code: 'reason-missing', sentence: 'Say why: it helps with the next quote.' });
  return ok(true);
}

const NO_SUCH_QUOTE = failed({
  code: 'no-such-quote',
  sentence: 'That quote was never issued; look at the list of issued quotes.',
});
