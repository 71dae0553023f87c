/*
 * The terms a booking was quoted on: rates, taxes, waiver and what it leaves out, frozen with the quote that was accepted.
 * Invariant: a booking is charged by its own quote; only what the quote did not yet hold comes from the house of its first day.
 * Not here: what is charged (charges-of.ts).
 * Read next: charges-of.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import { findQuote, type QuoteRow } from '#db/queries/quotes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { ReturnRates } from '#lib/pricing/return-facts.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { optionOf, type PapersInput } from '#lib/services/quotes/papers-of.ts';

export interface QuotedTerms {
  readonly quote: QuoteRow;
  readonly papers: PapersInput;
  readonly rates: ReturnRates;
  readonly waiver: 'taken' | 'declined';
}

interface TermsAsked {
  readonly context: Context;
  readonly booking: BookingRow;
}

export function quotedTerms(db: DbOrTx, { context, booking }: TermsAsked): Result<QuotedTerms> {
  const quote = booking.quote_id === null ? undefined : findQuote(db, booking.quote_id);
  if (!quote)
    return failed({
      code: 'booking-without-quote',
      sentence: `Booking ${booking.number} was made for no quote, so there is nothing to charge by.`,
    });
  const frozen = JSON.parse(quote.frozen_json) as PapersInput;
  const papers = optionOf(frozen, booking.option_slot) ?? frozen;
  return ok({
    quote,
    papers,
    rates: papers.house.returns ?? houseFacts(context, papers.site.startsOn).returns ?? NO_RATES,
    waiver: papers.choices?.waiver ?? 'taken',
  });
}

const NO_RATES: ReturnRates = { workshop_minor_per_hour: null, cleaning_minor: {} };
