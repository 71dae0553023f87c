/*
 * How an issued quote stands today: open to acceptance, accepted, declined, withdrawn, superseded by a revision, or lapsed.
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
  | { readonly kind: Closed; readonly reason: Refused };

type Closed = 'superseded' | 'lapsed' | 'declined' | 'withdrawn';
type IssuedQuote = Pick<QuoteSummary, 'id' | 'number' | 'revision' | 'valid_until' | 'state' | 'state_reason'>;

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
      sentence: `${named(accepted)} was accepted and booking ${other.number} holds its units; cancel that acceptance before another revision is accepted.`,
    });
  }
  const [newest] = quotes;
  if (quote.state === 'declined' || quote.state === 'withdrawn') return setAside({ quote, kind: quote.state });
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

const SET_ASIDE = {
  declined: { code: 'quote-declined', words: 'was declined by the customer' },
  withdrawn: { code: 'quote-withdrawn', words: 'was withdrawn' },
} as const;

function setAside({
  quote,
  kind,
}: {
  readonly quote: IssuedQuote;
  readonly kind: 'declined' | 'withdrawn';
}): QuoteStanding {
  const { code, words } = SET_ASIDE[kind];
  const why = quote.state_reason === '' ? '' : ` (${quote.state_reason})`;
  return refused({
    kind,
    code,
    sentence: `${named(quote)} ${words}${why}; open it again, or issue a new revision.`,
  });
}

function named({ number, revision }: Pick<IssuedQuote, 'number' | 'revision'>): string {
  return `${number} ${revision}`;
}

function refused({ kind, ...reason }: Refused & { readonly kind: Closed }): QuoteStanding {
  return { kind, reason };
}
