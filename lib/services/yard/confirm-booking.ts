/*
 * Confirms a held booking: it no longer runs out.
 * Invariant: a hold that has run out cannot be confirmed; the customer is told to ask again.
 * Not here: holding (hold-equipment.ts).
 * Read next: with-booking.ts.
 */
import { changeBooking, unitsOfBooking } from '#db/queries/bookings.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { type BookingState, decideBookingStep } from '#lib/stock/booking-life.ts';
import { bookedUnitStateOf, bookingStateOf, recordMove } from './booking-record.ts';
import { followUnits } from './step-units.ts';
import { withBooking } from './with-booking.ts';

export interface BookingNamed {
  readonly number: string;
}

export function confirmBooking(
  context: Context,
  { number }: BookingNamed,
): Result<{ readonly number: string; readonly state: BookingState }> {
  return withBooking(context, {
    number,
    work: (tx, booking) => {
      const from = bookingStateOf(booking);
      const units = unitsOfBooking(tx, booking.id).map(bookedUnitStateOf);
      const decided = decideBookingStep({ number, from, to: 'confirmed', units });
      if (!decided.ok) return decided;
      const set = { state: 'confirmed', confirmed_at: timestamp(context), held_until: null };
      changeBooking(tx, { id: booking.id, set });
      recordMove(tx, { context, bookingId: booking.id, unit: null, what: 'confirmed', from, to: 'confirmed' });
      logChange(tx, { context, deed: { action: 'booking confirmed', subject: `booking ${number}` } });
      return ok({ number, state: followUnits(tx, { context, booking: { ...booking, ...set } }) });
    },
  });
}
