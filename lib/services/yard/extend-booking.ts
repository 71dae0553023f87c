/*
 * Makes a hire longer: for all units or some, where they stay free or whoever counts on them can have another of the same model.
 * Invariant: nobody loses a unit without getting one as good; otherwise nothing is changed and the refusal names whom it hits.
 * Not here: what it costs by hand: the charge follows from the days (hire-of-booking.ts).
 * Read next: engagements.ts, with-booking.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addExtension } from '#db/queries/booking-history.ts';
import {
  type BookingRow,
  type BookingUnitRow,
  changeBookingItem,
  changeBookingUnit,
  itemsOfBooking,
} from '#db/queries/bookings.ts';
import { addDays, isIsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { countedFree, houseFacts, houseUnits } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { holds } from '#lib/stock/booking-life.ts';
import { fallsDue } from '#lib/stock/free-units.ts';
import { bookedUnitStateOf, recordMove } from './booking-record.ts';
import { type Hit, hitsOf, takeWay, tellHits, wayFor } from './engagements.ts';
import { hireOfBooking } from './hire-of-booking.ts';
import { type Earnest, stillRuns, unitsNamed, withBooking } from './with-booking.ts';

export interface Extension {
  readonly number: string;
  /** First day that no longer belongs to the hire. */
  readonly endsBefore: string;
  /** None means all that are still to come or on hire. */
  readonly serials: readonly string[];
  readonly askedBy: string;
  readonly why: string;
}

export interface Extended {
  readonly number: string;
  readonly endsBefore: string;
  readonly serials: readonly string[];
  /** Bookings that got another unit for it. */
  readonly moved: readonly Hit[];
  /** Net hire before and after, in the currency of the quote; null where nothing is charged. */
  readonly hire: { readonly before_minor: number; readonly after_minor: number; readonly currency: string } | null;
}

export function extendBooking(context: Context, extension: Extension, earnest: Earnest = 'for real'): Result<Extended> {
  return withBooking(context, {
    number: extension.number,
    earnest,
    work: (tx, booking) => {
      const runs = stillRuns(booking);
      if (!runs.ok) return runs;
      const chosen = unitsToExtend(tx, { context, booking, extension });
      if (!chosen.ok) return chosen;
      return extend(tx, { context, booking, extension, units: chosen.value });
    },
  });
}

interface Choosing {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly extension: Extension;
}

function unitsToExtend(tx: DbOrTx, { context, booking, extension }: Choosing): Result<readonly BookingUnitRow[]> {
  const { endsBefore, serials } = extension;
  if (!isIsoDate(endsBefore))
    return failed({ code: 'date-unreadable', sentence: 'Give the new last day as a calendar date.' });
  if (endsBefore > addDays(today(context), LONGEST_DAYS))
    return failed({ code: 'extension-too-long', sentence: 'A hire is extended by two years from today at the most.' });
  const may = (row: BookingUnitRow) => holds(bookedUnitStateOf(row)) && row.state !== 'back';
  const named = unitsNamed(tx, { booking, serials, may, are: 'still to come or on hire' });
  if (!named.ok) return named;
  const longer = named.value.find((row) => row.ends_before >= endsBefore);
  if (longer !== undefined)
    return failed({
      code: 'extension-shorter',
      sentence: `${longer.unit_serial} is booked to before ${longer.ends_before} already: an extension ends later.`,
    });
  const due = named.value.find((row) => {
    const unit = houseUnits(tx).find(({ serial }) => serial === row.unit_serial);
    return unit !== undefined && fallsDue({ unit, window: { starts_on: row.starts_on, ends_before: endsBefore } });
  });
  if (due === undefined) return named;
  return failed({
    code: 'check-falls-due',
    sentence: `An inspection or calibration of ${due.unit_serial} falls due before ${endsBefore}: swap it for another, then extend.`,
  });
}

/** Nobody extends a hire by more at once. House practice, no source. */
const LONGEST_DAYS = 730;

interface Extending extends Choosing {
  readonly units: readonly BookingUnitRow[];
}

function extend(tx: DbOrTx, extending: Extending): Result<Extended> {
  const { context, booking, extension, units } = extending;
  const { endsBefore } = extension;
  const way = wayFor(tx, {
    context,
    kept: units.map((row) => ({
      id: row.id,
      serial: row.unit_serial,
      window: { starts_on: row.starts_on, ends_before: endsBefore },
    })),
  });
  const moved = hitsOf(tx, way);
  if (way.hits.length > 0)
    return failed({
      code: 'extension-hits',
      sentence: `It cannot be extended to before ${endsBefore}: ${tellHits(moved)}, and no other of the same model is free there.`,
    });
  const before = hireOfBooking(tx, { context, booking });
  const made = takeWay(tx, { context, way, why: `${booking.number} was extended` });
  if (!made.ok) return made;
  const items = extendItems(tx, extending);
  if (!items.ok) return items;
  write(tx, extending);
  const after = hireOfBooking(tx, { context, booking });
  return ok({
    number: booking.number,
    endsBefore,
    serials: units.map(({ unit_serial }) => unit_serial),
    moved,
    hire:
      before === null || after === null
        ? null
        : { before_minor: hireSum(before), after_minor: hireSum(after), currency: before.terms.currency },
  });
}

function hireSum({ pieces }: NonNullable<ReturnType<typeof hireOfBooking>>): number {
  return pieces.reduce((sum, { change }) => sum + change.charged_minor, 0);
}

/** Counted pieces stay as long as the unit that stays longest. */
function extendItems(tx: DbOrTx, { context, booking, extension: { endsBefore } }: Extending): Result<true> {
  const turnaroundDays = houseFacts(context).turnaroundDays;
  for (const item of itemsOfBooking(tx, booking.id)) {
    if (!holds(bookedUnitStateOf(item)) || item.ends_before >= endsBefore) continue;
    const window = { starts_on: item.starts_on, ends_before: endsBefore };
    const free = countedFree(tx, { context, model: item.model_number, window, besideBooking: booking.id });
    if (free < item.count)
      return failed({
        code: 'pieces-not-free',
        sentence: `${item.count} of ${item.model_number} would stay out, and others count on them before ${endsBefore}: ${Math.max(0, free)} are free.`,
      });
    changeBookingItem(tx, {
      id: item.id,
      set: { ends_before: endsBefore, free_again_on: addDays(endsBefore, turnaroundDays) },
    });
  }
  return ok(true);
}

function write(tx: DbOrTx, { context, booking, extension, units }: Extending): void {
  const { endsBefore, askedBy, why } = extension;
  const { id, name } = actingPerson(context);
  const free_again_on = addDays(endsBefore, houseFacts(context).turnaroundDays);
  for (const row of units) {
    changeBookingUnit(tx, { id: row.id, set: { ends_before: endsBefore, free_again_on, expected_back_on: null } });
    const state = bookedUnitStateOf(row);
    recordMove(tx, {
      context,
      bookingId: booking.id,
      unit: row.unit_serial,
      what: 'extended',
      from: state,
      to: state,
      why,
      detail: `from before ${row.ends_before} to before ${endsBefore}${askedBy === '' ? '' : `, asked for by ${askedBy}`}`,
    });
  }
  const serials = units.map(({ unit_serial }) => unit_serial);
  addExtension(tx, {
    booking_id: booking.id,
    ended_before:
      units
        .map(({ ends_before }) => ends_before)
        .toSorted()
        .at(-1) ?? endsBefore,
    ends_before: endsBefore,
    serials_json: JSON.stringify(serials),
    asked_by: askedBy,
    at: timestamp(context),
    who_id: id,
    who: name,
    why,
  });
  const detail = { endsBefore, serials, askedBy, why };
  logChange(tx, { context, deed: { action: 'booking extended', subject: `booking ${booking.number}`, detail } });
}
