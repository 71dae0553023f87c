/*
 * Which unit of a booking a scan means at check-in, or why it is none: in already, never left, or of another booking.
 * Invariant: reads only; a refusal names the booking that the unit belongs to where it belongs to one.
 * Not here: checking it in (check-in.ts).
 * Read next: ../../../stock/scan-code.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, type BookingUnitRow, unitsOfBooking } from '#db/queries/bookings.ts';
import type { UnitRow } from '#db/queries/equipment.ts';
import { outWith } from '#db/queries/next-hires.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { unitWith } from '../unit-places.ts';
import { isFound } from './charged-as-lost.ts';

export interface FoundPiece {
  readonly unit: UnitRow;
  readonly booked: BookingUnitRow;
}

interface Scanned {
  readonly booking: BookingRow;
  readonly scan: string;
}

export function findBookedPiece(db: DbOrTx, { booking, scan }: Scanned): Result<FoundPiece> {
  const read = readScan(scan);
  if (read.kind === 'unknown') return failed({ code: 'scan-unreadable', sentence: read.sentence });
  if (read.kind !== 'unit')
    return failed({
      code: 'scan-not-a-unit',
      sentence:
        read.kind === 'model'
          ? 'That is a box of counted pieces: count them in the list below.'
          : `That is a ${read.kind}: scan the label of the piece itself.`,
    });
  const unit = unitWith(db, read.serial);
  if (!unit.ok) return unit;
  const booked = unitsOfBooking(db, booking.id)
    .filter(({ unit_serial, state }) => unit_serial === read.serial && state !== 'released')
    .at(-1);
  if (!booked) {
    const other = outWith(db, read.serial);
    return failed({
      code: 'not-of-this-booking',
      sentence:
        other === undefined
          ? `${read.serial} does not belong to booking ${booking.number}: put it aside and tell the Desk.`
          : `${read.serial} belongs to booking ${other}, not to ${booking.number}: open ${other} for it.`,
    });
  }
  return ok({ unit: unit.value, booked });
}

/** A unit that was swapped on hire is awaited too, until it is back, and so is one that was lost, until it is found. */
export function isAwaited({ state, out_on, back_on }: BookingUnitRow): boolean {
  if (state === 'lost') return !isFound({ state, back_on });
  return ['out', 'back'].includes(state) || (state === 'swapped' && out_on !== null && back_on === null);
}

export function mayComeIn({ unit, booked }: FoundPiece): Result<true> {
  if (isAwaited(booked)) return ok(true);
  if (booked.back_on !== null || booked.state === 'checked')
    return failed({ code: 'piece-in-already', sentence: `${unit.serial} is checked in already.` });
  return failed({
    code: 'piece-never-left',
    sentence: `${unit.serial} never left: it is ${booked.state} in this booking.`,
  });
}
