/*
 * Takes an acceptance back: the booking is cancelled, its units are free at once, and the quote is open again.
 * Invariant: all units are set free or none; a booking that the yard has begun to send out is not cancelled here.
 * Not here: what comes back from a hire (the yard).
 * Read next: accept-quote.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { bookedUnits, bookingOfQuote, cancelBooking } from '#db/queries/bookings.ts';
import { changeEnquiry as changeRow } from '#db/queries/enquiries.ts';
import { changeQuoteState, findQuote } from '#db/queries/quotes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { moveByDeed } from '#lib/services/enquiries/move-enquiry.ts';

export interface Cancellation {
  readonly quoteId: number;
  readonly reason: string;
}

export interface CancelledBooking {
  readonly number: string;
  readonly freed: readonly string[];
}

/** Only what is held and has not left the house can be given up by a word of the Desk. */
const HELD = 'held';

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
  if (booking.state !== HELD) {
    return failed({
      code: 'booking-under-way',
      sentence: `Booking ${booking.number} is ${booking.state}: the yard has to take it back before it is cancelled.`,
    });
  }
  const at = timestamp(context);
  const reason = cancellation.reason.trim();
  const freed = bookedUnits(tx, booking.id).map(({ serial }) => serial);
  cancelBooking(tx, { id: booking.id, note: reason });
  changeQuoteState(tx, {
    id: quote.id,
    state: 'issued',
    reason: `acceptance cancelled: ${reason}`,
    by: context.actor.name,
    at,
  });
  changeRow(tx, { id: quote.enquiry_id, at, set: {} });
  moveByDeed(tx, { context, enquiryId: quote.enquiry_id, by: 'booking cancelled', to: 'quoted', why: reason });
  addAuditEntry(tx, {
    at,
    who: context.actor,
    action: 'acceptance cancelled, units set free',
    subject: `enquiry ${quote.enquiry_id}`,
    detail_json: JSON.stringify({ booking: booking.number, freed, reason }),
  });
  return ok({ number: booking.number, freed });
}
