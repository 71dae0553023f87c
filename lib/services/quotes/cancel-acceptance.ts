/*
 * Takes an acceptance back: the booking is cancelled, its units are free at once, and the quote is open again.
 * Invariant: all units are set free or none; a booking that the yard has begun to send out is not cancelled here.
 * Not here: what comes back from a hire (the yard).
 * Read next: accept-quote.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { bookingOfQuote } from '#db/queries/bookings.ts';
import { findQuote } from '#db/queries/quotes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { endBooking } from '#lib/services/yard/end-booking.ts';

export interface Cancellation {
  readonly quoteId: number;
  readonly reason: string;
}

export interface CancelledBooking {
  readonly number: string;
  readonly freed: readonly string[];
}

export function cancelAcceptance(context: Context, cancellation: Cancellation): Result<CancelledBooking> {
  const allowed = authorise(context, 'issue quotes');
  if (!allowed.ok) return allowed;
  if (cancellation.reason.trim() === '')
    return failed({
      code: 'reason-missing',
      sentence: 'Say why the acceptance is taken back: it is kept with the booking.',
    });
  return context.database.db.transaction((tx) => cancel(tx, { context, cancellation }), { behavior: 'immediate' });
}

function cancel(
  tx: DbOrTx,
  { context, cancellation }: { readonly context: Context; readonly cancellation: Cancellation },
): Result<CancelledBooking> {
  const quote = findQuote(tx, cancellation.quoteId);
  const booking = quote ? bookingOfQuote(tx, quote.id) : undefined;
  if (!quote || !booking)
    return failed({ code: 'no-such-booking', sentence: 'No booking stands for this quote; load the page again.' });
  const reason = cancellation.reason.trim();
  const ended = endBooking(tx, { context, booking, to: 'cancelled', why: reason });
  if (!ended.ok) return ended;
  const freed = ended.value;
  addAuditEntry(tx, {
    at: timestamp(context),
    who: context.actor,
    action: 'acceptance cancelled, units set free',
    subject: `enquiry ${quote.enquiry_id}`,
    detail_json: JSON.stringify({ booking: booking.number, freed, reason }),
  });
  return ok({ number: booking.number, freed });
}
