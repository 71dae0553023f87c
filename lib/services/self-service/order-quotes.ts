/*
 * The quote of an order as its owner sees it, the revisions it took the place of, and the booking that came of it.
 * Invariant: how a quote stands is asked of the same function that accepts it.
 * Not here: making one (quote-order.ts), accepting it (accept-order.ts).
 * Read next: order-hire.ts.
 */
import type { BookingRow } from '#db/queries/bookings.ts';
import { newestBookingOfEnquiry } from '#db/queries/order-hire.ts';
import { findQuote } from '#db/queries/quotes.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { listIssuedQuotes, type QuoteView } from '#lib/services/quotes/list-issued-quotes.ts';
import type { PapersInput } from '#lib/services/quotes/papers-of.ts';
import type { QuoteStanding } from '#lib/services/quotes/quote-standing.ts';
import { bookingStateOf } from '#lib/services/yard/booking-record.ts';
import { type BookingState, hasEnded } from '#lib/stock/booking-life.ts';
import type { Language } from '#lib/wording/language.ts';
import { cancelUntil } from './cancel-until.ts';
import { sheetsAreDue } from './hire-papers.ts';
import type { OpenOrder } from './open-link.ts';
import { type OrderHire, orderHire } from './order-hire.ts';
import { stageOf } from './order-stage.ts';

export interface OrderQuote {
  readonly id: number;
  /** Number and revision. */
  readonly name: string;
  readonly validUntil: IsoDate;
  readonly total_minor: number;
  readonly currency: string;
  /** What its papers were drawn in. */
  readonly language: Language;
  readonly standing: QuoteStanding['kind'];
  /** What may be chosen from, where it offers more than one. */
  readonly options: readonly { readonly slot: number; readonly name: string; readonly gross_minor: number }[];
}

export interface OrderBooking {
  readonly number: string;
  readonly state: BookingState;
  readonly heldUntil: string | null;
  readonly cancelUntil: string;
  readonly mayCancel: boolean;
  readonly hasSheets: boolean;
  /** Why it came to nothing, as the house wrote it. */
  readonly why: string;
  readonly hire: OrderHire;
}

export interface QuotesOfOrder {
  readonly quote: OrderQuote | null;
  /** Earlier revisions, the newest first. */
  readonly older: readonly Pick<OrderQuote, 'name' | 'standing'>[];
  readonly booking: OrderBooking | null;
}

export function quotesOfOrder(context: Context, opened: OpenOrder): QuotesOfOrder {
  const { db } = context.database;
  const { order } = opened;
  const stage = stageOf(order);
  const quotes = listIssuedQuotes(opened.desk, order.enquiry_id);
  const newest = newestBookingOfEnquiry(db, order.enquiry_id);
  const booked = quotes.find(({ standing }) => standing.kind === 'accepted');
  const shown = booked ?? (stage === 'quoted' || stage === 'accepted' ? quotes[0] : undefined);
  return {
    quote: shown === undefined ? null : quoteView(shown, languageOf(context, shown.id)),
    older: quotes
      .filter(({ id }) => shown !== undefined && id !== shown.id)
      .map((quote) => ({ name: nameOf(quote), standing: quote.standing.kind })),
    booking: newest === undefined ? null : bookingView(context, { opened, booking: newest }),
  };
}

function nameOf({ number, revision }: Pick<QuoteView, 'number' | 'revision'>): string {
  return `${number} ${revision}`;
}

function languageOf({ database }: Context, quoteId: number): Language {
  const frozen = JSON.parse(findQuote(database.db, quoteId)?.frozen_json ?? '{}') as Pick<PapersInput, 'language'>;
  return frozen.language ?? 'en';
}

function quoteView(row: QuoteView, language: Language): OrderQuote {
  const { id, valid_until, total_minor, currency, options } = row;
  return {
    ...{ id, total_minor, currency, language },
    name: nameOf(row),
    validUntil: valid_until,
    standing: row.standing.kind,
    options: options.map(({ slot, name, total_minor: gross_minor }) => ({ slot, name, gross_minor })),
  };
}

interface Booked {
  readonly opened: OpenOrder;
  readonly booking: BookingRow;
}

function bookingView(context: Context, { opened: { desk }, booking }: Booked): OrderBooking {
  const state = bookingStateOf(booking);
  const hire = orderHire(desk, booking);
  const until = cancelUntil(context, hire.startsOn);
  const isEarly = state === 'held' || state === 'confirmed';
  return {
    ...{ number: booking.number, state, hire },
    heldUntil: booking.held_until,
    cancelUntil: until,
    hasSheets: sheetsAreDue(booking),
    mayCancel: isEarly && timestamp(context) < until,
    why: hasEnded(state) && state !== 'closed' ? booking.note : '',
  };
}
