/*
 * Gives up part of a booking before it leaves: the units named are free at once.
 * Invariant: something is left; whoever wants to give up all of it cancels the booking.
 * Not here: units that are out (they come back through the yard).
 * Read next: with-booking.ts.
 */
import { unitsOfBooking } from '#db/queries/bookings.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { holds } from '#lib/stock/booking-life.ts';
import { bookedUnitStateOf } from './booking-record.ts';
import { stepUnits } from './step-units.ts';
import { stillRuns, unitsNamed, withBooking } from './with-booking.ts';

export interface UnitsReleased {
  readonly number: string;
  readonly serials: readonly string[];
  readonly why: string;
}

export function releaseUnits(
  context: Context,
  { number, serials, why }: UnitsReleased,
): Result<{ readonly number: string; readonly freed: readonly string[] }> {
  return withBooking(context, {
    number,
    work: (tx, booking) => {
      const runs = stillRuns(booking);
      if (!runs.ok) return runs;
      if (serials.length === 0)
        return failed({ code: 'units-missing', sentence: 'Choose the units that are given up.' });
      if (why.trim() === '')
        return failed({
          code: 'reason-missing',
          sentence: 'Say why the units are given up: it is kept with the booking.',
        });
      const may = (row: { readonly state: string }) => ['held', 'allocated', 'picked'].includes(row.state);
      const units = unitsNamed(tx, { booking, serials, may, are: 'still in the house' });
      if (!units.ok) return units;
      const left = unitsOfBooking(tx, booking.id).filter((row) => holds(bookedUnitStateOf(row)));
      if (left.length === units.value.length)
        return failed({
          code: 'nothing-left',
          sentence: `Nothing would be left of booking ${number}: cancel it instead.`,
        });
      const stepped = stepUnits(tx, { context, booking, units: units.value, to: 'released', what: 'given up', why });
      if (!stepped.ok) return stepped;
      const freed = units.value.map(({ unit_serial }) => unit_serial);
      logChange(tx, {
        context,
        deed: { action: 'part of a booking given up', subject: `booking ${number}`, detail: { freed, why } },
      });
      return ok({ number, freed });
    },
  });
}
