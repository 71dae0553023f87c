/*
 * Ends a booking: cancelled, lapsed or closed. What it still holds is set free, and a quote that comes to nothing is open again.
 * Invariant: everything is set free or nothing; the steps stand in the history of the booking.
 * Not here: authorising and the log of the house: the verb that calls this does that, in the same transaction.
 * Read next: step-units.ts, cancel-booking.ts, expire-holds.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import {
  type BookingRow,
  changeBooking,
  changeBookingItem,
  changeBookingUnit,
  itemsOfBooking,
  unitsOfBooking,
} from '#db/queries/bookings.ts';
import { changeEnquiry as changeRow } from '#db/queries/enquiries.ts';
import { changeQuoteState, findQuote } from '#db/queries/quotes.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { moveByDeed } from '#lib/services/enquiries/move-enquiry.ts';
import { decideBookingStep, holds } from '#lib/stock/booking-life.ts';
import { bookedUnitStateOf, bookingStateOf, recordMove } from './booking-record.ts';

interface BookingEnd {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly to: 'cancelled' | 'lapsed' | 'closed';
  readonly why: string;
}

/** Answers the serial numbers that were set free. */
export function endBooking(tx: DbOrTx, { context, booking, to, why }: BookingEnd): Result<readonly string[]> {
  const units = unitsOfBooking(tx, booking.id);
  const from = bookingStateOf(booking);
  const decided = decideBookingStep({ number: booking.number, from, to, units: units.map(bookedUnitStateOf) });
  if (!decided.ok) return decided;
  const freed = units.filter((unit) => holds(bookedUnitStateOf(unit)));
  for (const unit of freed) {
    changeBookingUnit(tx, { id: unit.id, set: { state: 'released' } });
    recordMove(tx, {
      context,
      bookingId: booking.id,
      unit: unit.unit_serial,
      what: 'set free',
      from: bookedUnitStateOf(unit),
      to: 'released',
      why,
    });
  }
  for (const item of itemsOfBooking(tx, booking.id).filter((row) => holds(bookedUnitStateOf(row)))) {
    changeBookingItem(tx, { id: item.id, set: { state: to === 'closed' ? 'checked' : 'released' } });
  }
  const at = timestamp(context);
  const closed = to === 'closed' ? { closed_at: at } : { note: why };
  changeBooking(tx, { id: booking.id, set: { state: to, held_until: null, ...closed } });
  recordMove(tx, { context, bookingId: booking.id, unit: null, what: to, from, to, why });
  if (to !== 'closed') openQuoteAgain(tx, { context, booking, why: `${SAID[to]}: ${why}` });
  return ok(freed.map(({ unit_serial }) => unit_serial));
}

const SAID = { cancelled: 'acceptance cancelled', lapsed: 'booking lapsed' } as const;

function openQuoteAgain(tx: DbOrTx, { context, booking, why }: Omit<BookingEnd, 'to'>): void {
  const quote = booking.quote_id === null ? undefined : findQuote(tx, booking.quote_id);
  if (!quote) return;
  const at = timestamp(context);
  changeQuoteState(tx, { id: quote.id, state: 'issued', reason: why, by: context.actor.name, at });
  changeRow(tx, { id: quote.enquiry_id, at, set: {} });
  moveByDeed(tx, { context, enquiryId: quote.enquiry_id, by: 'booking cancelled', to: 'quoted', why });
}
