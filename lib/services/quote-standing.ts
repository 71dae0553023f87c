/*
 * How an issued quote stands today: open to acceptance, accepted, superseded by a revision, or lapsed.
 * Invariant: at most one quote of an enquiry is ever accepted; accepting and showing ask this same function.
 * Not here: whether the units are still free (accept-quote.ts decides that inside its transaction).
 * Read next: accept-quote.ts, list-issued-quotes.ts.
 */
import type { BookingRow } from '#db/queries/bookings.ts';
import type { QuoteSummary } from '#db/queries/quotes.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import type { Refused } from '#lib/kernel/result.ts';

export type QuoteStanding =
  | { readonly kind: 'open' }
  | { readonly kind: 'accepted' }
  /** It cannot be accepted; the reason says what can be done instead. */
  | { readonly kind: 'superseded' | 'lapsed'; readonly reason: Refused };

type IssuedQuote = Pick<QuoteSummary, 'id' | 'number' | 'revision' | 'valid_until'>;

interface StandingInput {
  readonly quote: IssuedQuote;
  /** All issued quotes of its enquiry, the newest first. */
  readonly quotes: readonly IssuedQuote[];
  readonly bookings: readonly BookingRow[];
  readonly today: IsoDate;
}

export function quoteStanding({ quote, quotes, bookings, today }: StandingInput): QuoteStanding {
  if (bookings.some((booking) => booking.quote_id === quote.id)) return { kind: 'accepted' };
  const other = bookings[0];
  const accepted = quotes.find(({ id }) => id === other?.quote_id);
  if (other && accepted) {
    return refused({
      kind: 'superseded',
      code: 'accepted-already',
      sentence: `${named(accepted)} was accepted and booking ${other.number} holds its units; that booking has to be cancelled before another revision can be accepted.`,
    });
  }
  const [newest] = quotes;
  if (newest && newest.id !== quote.id) {
    return refused({
      kind: 'superseded',
      code: 'quote-superseded',
      sentence: `${named(newest)} has taken the place of ${named(quote)}; accept that one, or issue a new revision.`,
    });
  }
  if (quote.valid_until < today) {
    return refused({
      kind: 'lapsed',
      code: 'quote-lapsed',
      sentence: `The quote was valid until ${quote.valid_until}; issue a new revision.`,
    });
  }
  return { kind: 'open' };
}

function named({ number, revision }: IssuedQuote): string {
  return `${number} ${revision}`;
}

function refused({ kind, ...reason }: Refused & { readonly kind: 'superseded' | 'lapsed' }): QuoteStanding {
  return { kind, reason };
}
