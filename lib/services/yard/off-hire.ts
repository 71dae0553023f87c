/*
 * Takes down the customer's word that the hire of units ends: numbered without gaps, with day and time, who said it and for which units.
 * Invariant: a notice is never before the unit left nor ahead of the clock, and each unit is given notice of once.
 * Not here: taking it back (the yard), and what is charged (hire-of-booking.ts).
 * Read next: ../../pricing/hire-charge.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { insertNotice, noticedUnits } from '#db/queries/booking-history.ts';
import type { BookingRow, BookingUnitRow } from '#db/queries/bookings.ts';
import { takeNumber } from '#db/queries/house.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { bookedUnitStateOf, recordMove } from './booking-record.ts';
import { stillRuns, unitsNamed, withBooking } from './with-booking.ts';

export interface OffHire {
  readonly number: string;
  /** When the customer gave notice (ISO 8601, UTC). */
  readonly noticedAt: string;
  readonly saidBy: string;
  /** None means all that is on hire. */
  readonly serials: readonly string[];
  readonly note: string;
}

export interface OffHireGiven {
  readonly notice: string;
  readonly serials: readonly string[];
}

export function giveOffHireNotice(context: Context, off: OffHire): Result<OffHireGiven> {
  return withBooking(context, {
    number: off.number,
    work: (tx, booking) => {
      const runs = stillRuns(booking);
      if (!runs.ok) return runs;
      const said = saidWell(off, timestamp(context));
      if (!said.ok) return said;
      const noticed = noticedUnits(tx, booking.id);
      const away = (row: BookingUnitRow) => (row.state === 'out' || row.state === 'back') && !noticed.has(row.id);
      const units = unitsNamed(tx, { booking, serials: off.serials, may: away, are: 'on hire without a notice' });
      if (!units.ok) return units;
      const early = units.value.find(({ out_on }) => out_on !== null && off.noticedAt.slice(0, 10) < out_on);
      if (early !== undefined)
        return failed({
          code: 'notice-too-early',
          sentence: `${early.unit_serial} left on ${early.out_on}: a notice cannot be from before that.`,
        });
      return ok(write(tx, { context, booking, off, units: units.value }));
    },
  });
}

function saidWell({ saidBy, noticedAt }: OffHire, now: string): Result<true> {
  if (saidBy.trim() === '')
    return failed({ code: 'said-by-missing', sentence: 'Say who gave the notice on the customer’s side.' });
  const at = Date.parse(noticedAt);
  if (!Number.isFinite(at))
    return failed({ code: 'moment-unreadable', sentence: 'Give the day and the time at which notice was given.' });
  if (at > Date.parse(now))
    return failed({
      code: 'notice-ahead',
      sentence:
        'A notice counts from when it was given, not ahead of time: give the day and time at which the customer said it.',
    });
  return ok(true);
}

interface Writing {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly off: OffHire;
  readonly units: readonly BookingUnitRow[];
}

function write(tx: DbOrTx, { context, booking, off, units }: Writing): OffHireGiven {
  const notice = `N-${String(takeNumber(tx, 'off-hire notice')).padStart(5, '0')}`;
  const { id, name } = actingPerson(context);
  const row = {
    number: notice,
    booking_id: booking.id,
    noticed_at: new Date(off.noticedAt).toISOString(),
    said_by: off.saidBy.trim(),
    at: timestamp(context),
    who_id: id,
    who: name,
    note: off.note.trim(),
  };
  insertNotice(tx, { row, unitIds: units.map((unit) => unit.id) });
  for (const unit of units) {
    const state = bookedUnitStateOf(unit);
    const detail = `${notice}, said by ${row.said_by} at ${row.noticed_at.slice(0, 16).replace('T', ' ')} UTC`;
    recordMove(tx, {
      context,
      bookingId: booking.id,
      unit: unit.unit_serial,
      what: 'off hire',
      from: state,
      to: state,
      why: row.note,
      detail,
    });
  }
  const serials = units.map(({ unit_serial }) => unit_serial);
  logChange(tx, {
    context,
    deed: {
      action: 'off-hire notice',
      subject: `booking ${booking.number}`,
      detail: { notice, serials, saidBy: row.said_by },
    },
  });
  return { notice, serials };
}
