/*
 * The packing list of an accepted quote, with the serial numbers of the booked units: drawn when it is first asked for, then kept.
 * Invariant: a paper of its own; quote and papers as issued stay as they are, and once drawn its bytes never change.
 * Not here: booking the units (accept-quote.ts).
 * Read next: papers-of.ts, read-paper.ts.
 */
import { bookedUnits, bookingOfQuote } from '#db/queries/bookings.ts';
import { findQuote, keepPaper } from '#db/queries/quotes.ts';
import { failed, type Result } from '#lib/kernel/result.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import { authorise } from './authorise.ts';
import { type Context, timestamp } from './context.ts';
import type { DrawnPaper } from './draft-paper.ts';
import { serialsByModel } from './list-issued-quotes.ts';
import { type PapersInput, paperOf } from './papers-of.ts';
import { readPaper } from './read-paper.ts';
import { sha256 } from './sha256.ts';

const KIND = 'booked-packing-list';

export async function bookedPackingList(
  context: Context,
  input: { readonly quoteId: number },
): Promise<Result<DrawnPaper>> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const kept = readPaper(context, { quoteId: input.quoteId, kind: KIND });
  if (kept.ok) return kept;
  const db = context.database.db;
  const quote = findQuote(db, input.quoteId);
  const booking = quote ? bookingOfQuote(db, quote.id) : undefined;
  if (!quote || !booking) {
    return failed({
      code: 'no-such-paper',
      sentence: 'Serial numbers are known once the quote is accepted; until then there is the packing list as issued.',
    });
  }
  const frozen = JSON.parse(quote.frozen_json) as PapersInput;
  const serials = serialsByModel(bookedUnits(db, booking.id));
  const issuedOn = booking.accepted_on ?? frozen.issuedOn;
  const paper = paperOf('packing-list', { ...frozen, serials, issuedOn, bookingNumber: booking.number });
  const bytes = Buffer.from(await drawPaper(paper));
  keepPaper(db, { quote_id: quote.id, kind: KIND, bytes, sha256: sha256(bytes), created_at: timestamp(context) });
  return readPaper(context, { quoteId: quote.id, kind: KIND });
}
