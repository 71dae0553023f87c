/*
 * The terms a booking was quoted on: rates, taxes, waiver and what it leaves out, frozen with the quote that was accepted.
 * Invariant: a booking is charged by its own quote; only what the quote did not yet hold comes from the house of its first day.
 * Not here: what is charged (charges-of.ts).
 * Read next: charges-of.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import { findQuote, type QuoteRow } from '#db/queries/quotes.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Exchange } from '#lib/money/exchange.ts';
import type { ReturnRates } from '#lib/pricing/return-facts.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { optionOf, type PapersInput } from '#lib/services/quotes/papers-of.ts';
import { chargedAsQuoted, returnsTurnedOver } from '#lib/services/quotes/quote-currency.ts';

export interface QuotedTerms {
  readonly quote: QuoteRow;
  readonly papers: PapersInput;
  readonly rates: ReturnRates;
  /** Where another currency than the house's own was quoted: papers and rates here are turned over at it. */
  readonly exchange: Exchange | null;
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
  const quoted = optionOf(frozen, booking.option_slot) ?? frozen;
  const papers = chargedAsQuoted(quoted);
  const exchange = quoted.exchange ?? null;
  return ok({
    quote,
    papers,
    rates: papers.house.returns ?? since(context, { startsOn: papers.site.startsOn, exchange }),
    exchange,
    waiver: papers.choices?.waiver ?? 'taken',
  });
}

interface Since {
  readonly startsOn: IsoDate;
  readonly exchange: Exchange | null;
}

/** Of quotes from before these prices were frozen: those of the first day of hire. */
function since(context: Context, { startsOn, exchange }: Since): ReturnRates {
  const rates = houseFacts(context, startsOn).returns ?? NO_RATES;
  return exchange === null ? rates : returnsTurnedOver(rates, exchange);
}

const NO_RATES: ReturnRates = { workshop_minor_per_hour: null, cleaning_minor: {} };
