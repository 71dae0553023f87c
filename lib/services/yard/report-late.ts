/*
 * Writes down that units on hire come back later than agreed, gives other bookings another unit where one is free, and names those it hits.
 * Invariant: from then on nobody is offered the unit before it is expected; nothing is refused, because the unit is late whether we like it or not.
 * Not here: an extension that we agree to (extend-booking.ts); the charge runs on by itself (hire-of-booking.ts).
 * Read next: engagements.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, type BookingUnitRow, changeBookingUnit } from '#db/queries/bookings.ts';
import { addDays, isIsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Context, today } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { bookedUnitStateOf, recordMove } from './booking-record.ts';
import { type Hit, hitsOf, takeWay, wayFor } from './engagements.ts';
import { type Earnest, stillRuns, unitsNamed, withBooking } from './with-booking.ts';

export interface LateReturn {
  readonly number: string;
  /** None means all that are out. */
  readonly serials: readonly string[];
  readonly expectedBackOn: string;
  readonly saidBy: string;
}

export interface LateReported {
  readonly number: string;
  readonly serials: readonly string[];
  readonly hits: readonly Hit[];
}

export function reportLate(context: Context, late: LateReturn, earnest: Earnest = 'for real'): Result<LateReported> {
  return withBooking(context, {
    number: late.number,
    earnest,
    work: (tx, booking) => {
      const runs = stillRuns(booking);
      if (!runs.ok) return runs;
      const { serials, expectedBackOn } = late;
      if (!isIsoDate(expectedBackOn) || expectedBackOn < today(context))
        return failed({ code: 'date-unreadable', sentence: 'Give the day on which it is expected, today or later.' });
      const units = unitsNamed(tx, { booking, serials, may: ({ state }) => state === 'out', are: 'out' });
      if (!units.ok) return units;
      const onTime = units.value.find(({ ends_before }) => expectedBackOn < ends_before);
      if (onTime !== undefined)
        return failed({
          code: 'not-late',
          sentence: `${onTime.unit_serial} is booked to before ${onTime.ends_before}: back on ${expectedBackOn} is in time.`,
        });
      return report(tx, { context, booking, late, units: units.value });
    },
  });
}

interface Reporting {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly late: LateReturn;
  readonly units: readonly BookingUnitRow[];
}

function report(tx: DbOrTx, { context, booking, late, units }: Reporting): Result<LateReported> {
  const { expectedBackOn, saidBy } = late;
  const way = wayFor(tx, {
    context,
    kept: units.map((row) => ({
      id: row.id,
      serial: row.unit_serial,
      window: { starts_on: row.starts_on, ends_before: addDays(expectedBackOn, 1) },
    })),
  });
  const hits = hitsOf(tx, way);
  for (const row of units) {
    changeBookingUnit(tx, { id: row.id, set: { expected_back_on: expectedBackOn } });
    const state = bookedUnitStateOf(row);
    const detail = `expected back on ${expectedBackOn}${saidBy === '' ? '' : `, said by ${saidBy}`}`;
    recordMove(tx, {
      context,
      bookingId: booking.id,
      unit: row.unit_serial,
      what: 'late',
      from: state,
      to: state,
      detail,
    });
  }
  const made = takeWay(tx, { context, way, why: `${booking.number} is late` });
  if (!made.ok) return made;
  const serials = units.map(({ unit_serial }) => unit_serial);
  const detail = { serials, expectedBackOn, saidBy, hits };
  logChange(tx, { context, deed: { action: 'late return reported', subject: `booking ${booking.number}`, detail } });
  return ok({ number: booking.number, serials, hits });
}
