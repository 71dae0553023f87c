/*
 * Puts another unit in the place of one, in one booking: the old row ends as swapped, a new one holds the days that are left.
 * Invariant: the history of the booking names both; the new row says in whose place it stands and which model was quoted.
 * Not here: deciding that it fits and is free.
 * Read next: swap-unit.ts, make-way.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, type BookingUnitRow, insertBookingUnit } from '#db/queries/bookings.ts';
import { findUnit } from '#db/queries/stock.ts';
import type { DateRange } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { recordMove } from './booking-record.ts';
import { stepUnits } from './step-units.ts';

interface Replacement {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly row: BookingUnitRow;
  readonly serial: string;
  readonly window: DateRange;
  readonly freeAgainOn: string;
  readonly why: string;
  readonly detail?: string;
}

export function replaceUnit(tx: DbOrTx, replacement: Replacement): Result<BookingUnitRow> {
  const { context, booking, row, serial, window, freeAgainOn, why, detail = '' } = replacement;
  // The other comes first, so that the booking never looks as if nothing of it were left.
  const quoted = row.quoted_model === '' ? (findUnit(tx, row.unit_serial)?.model_number ?? '') : row.quoted_model;
  const isOther = findUnit(tx, serial)?.model_number !== quoted;
  const added = insertBookingUnit(tx, {
    booking_id: booking.id,
    unit_serial: serial,
    starts_on: window.starts_on,
    ends_before: window.ends_before,
    free_again_on: freeAgainOn,
    replaces_id: row.id,
    quoted_model: isOther ? quoted : '',
  });
  recordMove(tx, {
    context,
    bookingId: booking.id,
    unit: serial,
    what: 'held',
    from: 'held',
    to: 'held',
    why,
    detail: `In the place of ${row.unit_serial}. ${detail}`.trim(),
  });
  const left = stepUnits(tx, {
    context,
    booking,
    units: [row],
    to: 'swapped',
    what: 'swapped',
    why,
    detail: `${serial} takes its place. ${detail}`.trim(),
  });
  if (!left.ok) return left;
  return ok(added);
}
