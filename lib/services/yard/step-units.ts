/*
 * Takes units of one booking a step further, all or none, and lets the booking follow.
 * Invariant: every step is one that the life of a booking allows, stands in its history, and the booking's state agrees with its units' afterwards.
 * Not here: authorising, deciding to do it, and the log of the house: the verb that calls this does that, in the same transaction.
 * Read next: ../../stock/booking-life.ts, booking-record.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import {
  type BookingRow,
  type BookingUnitRow,
  bookingsById,
  changeBooking,
  changeBookingUnit,
  unitsOfBooking,
} from '#db/queries/bookings.ts';
import { changeUnit, findUnit } from '#db/queries/stock.ts';
import { addUnitEvent } from '#db/queries/unit-events.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { type BookedUnitState, type BookingState, decideUnitStep, followedState } from '#lib/stock/booking-life.ts';
import { bookedUnitStateOf, bookingStateOf, recordMove } from './booking-record.ts';

export interface UnitsStep {
  readonly context: Context;
  readonly booking: BookingRow;
  /** Rows of this booking, as they are in this transaction. */
  readonly units: readonly BookingUnitRow[];
  readonly to: BookedUnitState;
  /** What was done, in a few plain words for the history, such as `picked`. */
  readonly what: string;
  readonly why?: string;
  readonly detail?: string;
}

export function stepUnits(tx: DbOrTx, step: UnitsStep): Result<BookingState> {
  const { context, booking, units, to, what, why, detail } = step;
  for (const unit of units) {
    const decided = decideUnitStep({ serial: unit.unit_serial, from: bookedUnitStateOf(unit), to });
    if (!decided.ok) return decided;
  }
  for (const unit of units) {
    changeBookingUnit(tx, { id: unit.id, set: { state: to, ...daysOf({ to, day: today(context) }) } });
    setUnit(tx, { step, serial: unit.unit_serial });
    recordMove(tx, {
      context,
      bookingId: booking.id,
      unit: unit.unit_serial,
      what,
      from: bookedUnitStateOf(unit),
      to,
      why,
      detail,
    });
  }
  return ok(followUnits(tx, { context, booking }));
}

/** Sets the booking to what its units have come to; says so in its history where that is new. */
export function followUnits(
  tx: DbOrTx,
  { context, booking }: { readonly context: Context; readonly booking: BookingRow },
): BookingState {
  // As it is now: an earlier step of the same deed may have moved it already.
  const now = bookingsById(tx, [booking.id]).get(booking.id) ?? booking;
  const from = bookingStateOf(now);
  const to = followedState({ booking: from, units: unitsOfBooking(tx, booking.id).map(bookedUnitStateOf) });
  if (to === from) return to;
  changeBooking(tx, { id: booking.id, set: { state: to, held_until: to === 'held' ? now.held_until : null } });
  recordMove(tx, { context, bookingId: booking.id, unit: null, what: `is ${to}`, from, to });
  return to;
}

function daysOf({
  to,
  day,
}: {
  readonly to: BookedUnitState;
  readonly day: string;
}): Partial<Pick<BookingUnitRow, 'out_on' | 'back_on'>> {
  if (to === 'out') return { out_on: day };
  return to === 'back' ? { back_on: day } : {};
}

/** A unit that leaves, comes back or is lost is so itself, and its own history says so. */
function setUnit(tx: DbOrTx, { step, serial }: { readonly step: UnitsStep; readonly serial: string }): void {
  const { context, booking, to } = step;
  if (to !== 'out' && to !== 'back' && to !== 'lost') return;
  const before = findUnit(tx, serial)?.state ?? '';
  changeUnit(tx, { serial, set: { state: to } });
  addUnitEvent(tx, {
    serial,
    at: timestamp(context),
    who: actingPerson(context),
    kind: to === 'lost' ? 'state' : to,
    before,
    after: to,
    reason: step.why ?? '',
    reference: booking.number,
  });
}
