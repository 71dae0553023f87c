/*
 * What names the booked units of an accepted quote: the packing list with serial numbers, and the despatch advice. Drawn when first asked for, then kept.
 * Invariant: papers of their own; quote and papers as issued stay as they are, and once drawn the bytes never change.
 * Not here: booking the units (accept-quote.ts).
 * Read next: papers-of.ts, read-paper.ts.
 */
import { type BookingRow, bookedUnits, bookingOfQuote } from '#db/queries/bookings.ts';
import { findQuote, keepPaper, type QuoteRow } from '#db/queries/quotes.ts';
import { despatchXml } from '#lib/documents/exchange/despatch-xml.ts';
import { failed, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import type { DrawnPaper } from './draft-paper.ts';
import { serialsByModel } from './list-issued-quotes.ts';
import { optionOf, type PapersInput, packingInput, paperOf } from './papers-of.ts';
import { readPaper } from './read-paper.ts';

export const BOOKED_PAPERS = ['booked-packing-list', 'despatch-xml'] as const;
export type BookedPaper = (typeof BOOKED_PAPERS)[number];

export async function bookedPaper(
  context: Context,
  input: { readonly quoteId: number; readonly kind: BookedPaper },
): Promise<Result<DrawnPaper>> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const quote = findQuote(db, input.quoteId);
  const booking = quote ? bookingOfQuote(db, quote.id) : undefined;
  if (!quote || !booking) {
    return failed({
      code: 'no-such-paper',
      sentence: 'Serial numbers are known once the quote is accepted; until then there is the packing list as issued.',
    });
  }
  // A quote that is accepted again after a cancellation has other units, and papers of their own.
  const kind = `${input.kind}~${booking.number}`;
  const kept = readPaper(context, { quoteId: quote.id, kind });
  if (kept.ok) return kept;
  const bytes = await draw(input.kind, { quote, booking, facts: bookedFacts(context, { quote, booking }) });
  keepPaper(db, {
    quote_id: quote.id,
    kind,
    bytes,
    sha256: sha256(bytes),
    created_at: timestamp(context),
  });
  return readPaper(context, { quoteId: quote.id, kind });
}

interface Booked {
  readonly quote: QuoteRow;
  readonly booking: BookingRow;
}

/** What the quote was frozen with, and the units that were booked for it. */
function bookedFacts(context: Context, { quote, booking }: Booked): PapersInput {
  const papers = JSON.parse(quote.frozen_json) as PapersInput;
  const frozen = optionOf(papers, booking.option_slot) ?? papers;
  return {
    ...frozen,
    serials: serialsByModel(bookedUnits(context.database.db, booking.id)),
    issuedOn: booking.accepted_on ?? frozen.issuedOn,
    bookingNumber: booking.number,
  };
}

async function draw(
  kind: BookedPaper,
  { quote, booking, facts }: Booked & { readonly facts: PapersInput },
): Promise<Buffer> {
  switch (kind) {
    case 'booked-packing-list':
      return Buffer.from(await drawPaper(paperOf('packing-list', facts)));
    case 'despatch-xml': {
      const orderNumber = booking.order_number === '' ? `${quote.number} ${quote.revision}` : booking.order_number;
      return Buffer.from(despatchXml({ ...packingInput(facts), orderNumber }), 'utf8');
    }
  }
}
