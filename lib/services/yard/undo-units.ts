/*
 * Takes units of one booking back a step, all or none, and lets the booking follow: a leaving or a check-in that was wrong.
 * Invariant: nothing is taken back in a booking that has ended, nor a unit that somebody else holds by now.
 * Not here: authorising and the log of the house: the verb that calls this does that, in the same transaction.
 * Read next: step-units.ts, ../../stock/booking-life.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, type BookingUnitRow, changeBookingUnit } from '#db/queries/bookings.ts';
import { nextHires } from '#db/queries/next-hires.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { decideUnitUndo, hasEnded } from '#lib/stock/booking-life.ts';
import { bookedUnitStateOf, bookingStateOf, recordMove } from './booking-record.ts';
import { followUnits } from './step-units.ts';

interface UnitsUndo {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly units: readonly BookingUnitRow[];
  readonly to: 'picked' | 'out';
  readonly what: string;
  readonly why: string;
}

export function undoUnits(tx: DbOrTx, { context, booking, units, to, what, why }: UnitsUndo): Result<true> {
  if (hasEnded(bookingStateOf(booking)))
    return failed({
      code: 'booking-ended',
      sentence: `Booking ${booking.number} is ${booking.state}: what was done stays.`,
    });
  const others = nextHires(tx, { serials: units.map(({ unit_serial }) => unit_serial), beside: booking.id });
  for (const unit of units) {
    const decided = decideUnitUndo({ serial: unit.unit_serial, from: bookedUnitStateOf(unit), to });
    if (!decided.ok) return decided;
    const taken = others.find(
      (other) =>
        other.serial === unit.unit_serial && other.startsOn < unit.free_again_on && unit.starts_on < other.freeAgainOn,
    );
    if (taken)
      return failed({
        code: 'unit-taken-again',
        sentence: `${unit.unit_serial} is booked for ${taken.booking} from ${taken.startsOn} by now; swap it there first.`,
      });
  }
  for (const unit of units) {
    changeBookingUnit(tx, {
      id: unit.id,
      set: { state: to, back_on: null, ...(to === 'picked' ? { out_on: null } : {}) },
    });
    recordMove(tx, {
      context,
      bookingId: booking.id,
      unit: unit.unit_serial,
      what,
      from: bookedUnitStateOf(unit),
      to,
      why,
    });
  }
  followUnits(tx, { context, booking });
  return ok(true);
}
