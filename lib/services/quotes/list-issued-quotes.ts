/*
 * The issued quotes of an enquiry with how each stands and what was booked for it.
 * Invariant: a quote that was accepted names its booking and every unit in it.
 * Not here: issuing (issue-quote.ts) and accepting (accept-quote.ts).
 * Read next: quote-standing.ts.
 */
import { type BookedUnit, type BookingRow, bookedUnits, bookingsOfEnquiry } from '#db/queries/bookings.ts';
import { listPapers, listQuotes, type QuoteSummary } from '#db/queries/quotes.ts';
import type { Context } from '#lib/services/context.ts';
import { today } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';
import { type QuoteStanding, quoteStanding } from './quote-standing.ts';

export interface BookingView {
  readonly number: string;
  /** One of BOOKING_STATES. */
  readonly state: string;
  readonly acceptedOn: string | null;
  readonly acceptedBy: string;
  readonly orderNumber: string;
  readonly heldUntil: string | null;
  /** Of the hire: the first day, and the first day after it. */
  readonly window: { readonly starts_on: string; readonly ends_before: string } | null;
  readonly models: readonly { readonly number: string; readonly name: string; readonly serials: readonly string[] }[];
}

export interface QuoteView extends Omit<QuoteSummary, 'options_json' | 'order_number' | 'program'> {
  readonly standing: QuoteStanding;
  readonly booking: BookingView | null;
  /** Everything kept with it, with the SHA-256 of its bytes. */
  readonly papers: readonly { readonly kind: string; readonly sha256: string }[];
  /** Where it offers several: slot, name and total of each. */
  readonly options: readonly { readonly slot: number; readonly name: string; readonly total_minor: number }[];
  readonly orderNumber: 'asked for' | 'not asked for';
  /** Version of the program that drew it; empty in quotes from before it was kept. */
  readonly drawnBy: string;
}

export function listIssuedQuotes(context: Context, enquiryId: number): readonly QuoteView[] {
  const db = context.database.db;
  const quotes = listQuotes(db, enquiryId);
  const bookings = bookingsOfEnquiry(db, enquiryId);
  return quotes.map(({ options_json, order_number, program, ...quote }) => {
    const booking = bookings.find(({ quote_id }) => quote_id === quote.id);
    return {
      ...quote,
      standing: quoteStanding({ quote, quotes, bookings, today: today(context) }),
      booking: booking ? bookingView(context, booking) : null,
      papers: listPapers(db, quote.id).filter(({ kind }) => !kind.includes('~')),
      options: optionsIn(options_json),
      orderNumber: order_number === 'asked for' ? 'asked for' : 'not asked for',
      drawnBy: program ?? '',
    };
  });
}

/** As the database picks them out of what was frozen: the first, and those beside it. */
function optionsIn(json: string): QuoteView['options'] {
  const [first, others] = JSON.parse(json) as readonly [FrozenOption | null, readonly FrozenOption[] | null];
  if (first === null || others === null) return [];
  return [first, ...others].map(({ option, price }) => ({ ...option, total_minor: price.gross_minor }));
}

interface FrozenOption {
  readonly option: { readonly slot: number; readonly name: string };
  readonly price: { readonly gross_minor: number };
}

function bookingView(context: Context, booking: BookingRow): BookingView {
  const units = bookedUnits(context.database.db, booking.id);
  const names = new Map(knownModels(context).map(({ number, name }) => [number, name]));
  const [first] = units;
  return {
    number: booking.number,
    state: booking.state,
    acceptedOn: booking.accepted_on,
    acceptedBy: booking.accepted_by,
    orderNumber: booking.order_number,
    heldUntil: booking.held_until,
    window: first ? { starts_on: first.starts_on, ends_before: first.ends_before } : null,
    models: Object.entries(serialsByModel(units)).map(([number, serials]) => ({
      number,
      name: names.get(number) ?? number,
      serials,
    })),
  };
}

/** Serial numbers by model, models in the order in which they first come up. */
export function serialsByModel(units: readonly BookedUnit[]): Readonly<Record<string, readonly string[]>> {
  const models = [...new Set(units.map(({ model }) => model))];
  return Object.fromEntries(
    models.map((model) => [model, units.filter((unit) => unit.model === model).map(({ serial }) => serial)]),
  );
}
