/*
 * Every paper of a booking in one place: for the crew, for the load, for the customer; each with where it is, or why it is not there yet.
 * Invariant: reads only; names a paper only to who may open it.
 * Not here: drawing them (packing/load-papers.ts, out/delivery-despatch.ts, back/read-return-note.ts).
 * Read next: packing/load-papers.ts, back/open-charges.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, itemsOfBooking, unitsOfBooking } from '#db/queries/bookings.ts';
import { type DeliveryRow, deliveriesOfBooking } from '#db/queries/deliveries.ts';
import { findQuote } from '#db/queries/quotes.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { hasEnded, holds } from '#lib/stock/booking-life.ts';
import { openCharges } from './back/open-charges.ts';
import { bookedUnitStateOf, bookingNumbered, bookingStateOf } from './booking-record.ts';

export interface BookingPaper {
  readonly name: string;
  /** Where it is read; null while it is not there. */
  readonly href: string | null;
  readonly form: 'PDF' | 'XML';
  /** What it is for, or why it is not there yet. */
  readonly about: string;
}

export interface PaperGroup {
  readonly whom: string;
  readonly papers: readonly BookingPaper[];
}

/** How far the charges of what came back are: each state asks for another deed. */
export type ChargesStanding =
  | { readonly kind: 'nothing back' }
  | { readonly kind: 'to decide'; readonly waiting: number; readonly pieces: number }
  | { readonly kind: 'decided'; readonly pieces: number; readonly grossMinor: number; readonly currency: string }
  | { readonly kind: 'on notes' }
  /** Own use: there is no quote whose terms would charge anything. */
  | { readonly kind: 'none' };

export interface BookingPapersView {
  readonly groups: readonly PaperGroup[];
  readonly charges: ChargesStanding;
  readonly notes: readonly {
    readonly number: string;
    readonly issuedAt: string;
    readonly grossMinor: number;
    readonly currency: string;
  }[];
}

export function bookingPapers(context: Context, number: string): Result<BookingPapersView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const found = bookingNumbered(db, number);
  if (!found.ok) return found;
  const booking = found.value;
  const at = { booking, hasQuote: booking.quote_id !== null, hasLoad: hasLoad(db, booking) };
  const groups = [
    { whom: 'For the crew', papers: crewPapers(at) },
    { whom: 'For the load', papers: loadPapers(at, deliveriesOfBooking(db, booking.id)) },
    { whom: 'For the customer', papers: customerPapers(db, { context, booking }) },
  ];
  return ok({ groups: groups.filter(({ papers }) => papers.length > 0), ...chargesOf(context, booking) });
}

/** Something is held, picked or out: the papers of the load can be drawn. */
function hasLoad(db: DbOrTx, { id }: BookingRow): boolean {
  return [...unitsOfBooking(db, id), ...itemsOfBooking(db, id)].some((row) => holds(bookedUnitStateOf(row)));
}

interface LoadAsked {
  readonly booking: BookingRow;
  readonly hasQuote: boolean;
  readonly hasLoad: boolean;
}

const NO_QUOTE = 'This booking belongs to no quote: only its case labels are printed.';
const NO_LOAD = 'Nothing is held by this booking any more.';

function crewPapers({ booking, hasQuote, hasLoad: isLoaded }: LoadAsked): readonly BookingPaper[] {
  const path = `/api/v1/yard/bookings/${booking.number}/papers`;
  if (!hasQuote) return [{ name: 'Site sheets', href: null, form: 'PDF', about: NO_QUOTE }];
  return [
    {
      name: 'Site sheets',
      href: `${path}/site-sheet`,
      form: 'PDF',
      about: 'A page for each class of valves, in working order, with blanks for what is found.',
    },
    {
      name: 'Certificates',
      href: isLoaded ? `${path}/certificates` : null,
      form: 'PDF',
      about: isLoaded ? 'Inspections and calibrations of every unit that goes.' : NO_LOAD,
    },
  ];
}

function loadPapers(
  { booking, hasQuote, hasLoad: isLoaded }: LoadAsked,
  deliveries: readonly DeliveryRow[],
): readonly BookingPaper[] {
  const path = `/api/v1/yard/bookings/${booking.number}/papers`;
  const labels = {
    name: 'Case labels',
    href: isLoaded ? `${path}/case-labels` : null,
    form: 'PDF',
    about: isLoaded ? 'One for each case, with bars, mass, lift mark and dangerous goods.' : NO_LOAD,
  } as const;
  if (!hasQuote) return [labels];
  const left = deliveries.filter(({ despatch_xml }) => despatch_xml !== null);
  return [
    {
      name: 'Packing list',
      href: isLoaded ? `${path}/packing-list` : null,
      form: 'PDF',
      about: isLoaded ? 'Cases with contents, serial numbers and boxes to tick.' : NO_LOAD,
    },
    labels,
    ...(left.length === 0
      ? [
          {
            name: 'Despatch advice',
            href: isLoaded ? `${path}/despatch-xml` : null,
            form: 'XML',
            about: isLoaded ? 'UBL 2.1, of the load as it is packed; each delivery has its own when it left.' : NO_LOAD,
          } as const,
        ]
      : left.map(
          (row): BookingPaper => ({
            name: `Despatch advice, delivery ${row.sequence}`,
            href: `/api/v1/yard/deliveries/${row.id}/despatch`,
            form: 'XML',
            about: row.state === 'left' ? 'UBL 2.1, of what left with it.' : 'UBL 2.1; this delivery was taken back.',
          }),
        )),
  ];
}

interface CustomerAsked {
  readonly context: Context;
  readonly booking: BookingRow;
}

function customerPapers(db: DbOrTx, { context, booking }: CustomerAsked): readonly BookingPaper[] {
  const quote = booking.quote_id === null ? undefined : findQuote(db, booking.quote_id);
  if (!quote || !authorise(context, 'read enquiries').ok) return [];
  const papers = `/api/v1/quotes/${quote.id}/papers`;
  return [
    { name: `Quote ${quote.number} ${quote.revision}`, href: `${papers}/quote`, form: 'PDF', about: 'As issued.' },
    { name: 'Calculation sheet', href: `${papers}/calculation`, form: 'PDF', about: 'As issued with the quote.' },
  ];
}

function chargesOf(context: Context, booking: BookingRow): Pick<BookingPapersView, 'charges' | 'notes'> {
  const opened = booking.quote_id === null ? undefined : openCharges(context, booking.number);
  if (!opened?.ok) return { charges: { kind: 'none' }, notes: [] };
  const { charges, pieces, total, currency, notes } = opened.value;
  const waiting = charges.filter(({ word }) => word === null).length;
  return { notes, charges: standing() };

  function standing(): ChargesStanding {
    if (hasEnded(bookingStateOf(booking)) || pieces === 0)
      return { kind: notes.length > 0 ? 'on notes' : 'nothing back' };
    if (waiting > 0 || total === null) return { kind: 'to decide', waiting, pieces };
    return { kind: 'decided', pieces, grossMinor: total.gross, currency };
  }
}
