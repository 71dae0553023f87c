/*
 * One booking with all that belongs to it: units and counted pieces, days, notices, extensions, history, and the hire so far.
 * Invariant: reads only; what may be done now is decided here by the same life that the verbs follow.
 * Not here: changing it.
 * Read next: hire-of-booking.ts, ../../stock/booking-life.ts.
 */
import {
  type BookingExtensionRow,
  type BookingMoveRow,
  extensionsOfBooking,
  movesOfBooking,
  noticedUnits,
  noticesOfBooking,
  type OffHireNoticeRow,
} from '#db/queries/booking-history.ts';
import { type BookingRow, type BookingUnitRow, unitsOfBooking } from '#db/queries/bookings.ts';
import { bookingFound, type FoundBooking } from '#db/queries/bookings-found.ts';
import { findUnit } from '#db/queries/stock.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { houseFacts, houseUnits, knownModels, onTheWay } from '#lib/services/house/house-facts.ts';
import { type BookingState, hasEnded } from '#lib/stock/booking-life.ts';
import { freeUnits } from '#lib/stock/free-units.ts';
import { hasRunOut } from '#lib/stock/hold.ts';
import { bookingNumbered, bookingStateOf, noSuchBooking } from './booking-record.ts';
import { countedStanding } from './counted-standing.ts';
import { engagementsNow, type Hit, hitsOf, wayFor } from './engagements.ts';
import { type HireSoFar, hireSoFar } from './hire-so-far.ts';

export interface BookedUnitView {
  readonly serial: string;
  readonly model: string;
  readonly name: string;
  readonly state: string;
  readonly startsOn: string;
  readonly endsBefore: string;
  readonly outOn: string | null;
  readonly backOn: string | null;
  readonly expectedBackOn: string | null;
  readonly isLate: boolean;
  /** Serial number in whose place it stands. */
  readonly inPlaceOf: string | null;
  /** Model that was quoted, where it stands in for another. */
  readonly quotedModel: string;
  readonly notice: string | null;
  /** Of the same model, free for the days that are left. */
  readonly spares: readonly string[];
}

export interface BookingView extends Omit<FoundBooking, 'units'> {
  readonly stands: BookingState;
  readonly hasRunOut: boolean;
  readonly note: string;
  readonly acceptedBy: string;
  readonly confirmedAt: string | null;
  readonly closedAt: string | null;
  readonly units: readonly BookedUnitView[];
  readonly items: readonly {
    readonly model: string;
    readonly name: string;
    readonly count: number;
    /** How far they are, such as `4 out, 2 back`. */
    readonly stands: string;
  }[];
  readonly moves: readonly BookingMoveRow[];
  readonly notices: readonly OffHireNoticeRow[];
  readonly extensions: readonly BookingExtensionRow[];
  readonly hire: HireSoFar | null;
  /** Whom the late units hit. */
  readonly hits: readonly Hit[];
  readonly mayChange: boolean;
  readonly today: string;
}

export function openBooking(context: Context, number: string): Result<BookingView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const found = bookingFound(db, number);
  const row = bookingNumbered(db, number);
  if (!found || !row.ok) return noSuchBooking(number.slice(0, 20));
  const booking = row.value;
  const stands = bookingStateOf(booking);
  const names = new Map(knownModels(context).map((model) => [model.number, model.name]));
  const runOut = hasRunOut({ state: stands, heldUntil: booking.held_until, now: new Date(timestamp(context)) });
  return ok({
    ...found,
    stands,
    hasRunOut: runOut,
    note: booking.note,
    acceptedBy: booking.accepted_by,
    confirmedAt: booking.confirmed_at,
    closedAt: booking.closed_at,
    units: unitViews({ context, booking, names }),
    items: countedStanding(context, booking).map((item) => ({ ...item, name: names.get(item.model) ?? item.model })),
    moves: movesOfBooking(db, booking.id),
    notices: noticesOfBooking(db, booking.id),
    extensions: extensionsOfBooking(db, booking.id),
    hire: hireSoFar(context, booking),
    hits: hitsNow(context, booking),
    mayChange: authorise(context, 'book equipment').ok && !hasEnded(stands) && !runOut,
    today: today(context),
  });
}

interface Units {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly names: ReadonlyMap<string, string>;
}

function unitViews({ context, booking, names }: Units): readonly BookedUnitView[] {
  const db = context.database.db;
  const rows = unitsOfBooking(db, booking.id);
  const noticed = noticedUnits(db, booking.id);
  const all = houseUnits(db);
  const bookings = hasEnded(bookingStateOf(booking)) ? [] : [...engagementsNow(db, context), ...onTheWay(context)];
  const { turnaroundDays } = houseFacts(context);
  return rows.map((row) => {
    const model = findUnit(db, row.unit_serial)?.model_number ?? '';
    const wanted = row.quoted_model === '' ? model : row.quoted_model;
    const window = { starts_on: laterOf(row.starts_on, today(context)), ends_before: row.ends_before };
    const swappable =
      ['held', 'allocated', 'picked', 'out'].includes(row.state) && window.starts_on < window.ends_before;
    const alike = all.filter((unit) => unit.model === wanted);
    return {
      serial: row.unit_serial,
      model,
      name: names.get(model) ?? model,
      state: row.state,
      startsOn: row.starts_on,
      endsBefore: row.ends_before,
      outOn: row.out_on,
      backOn: row.back_on,
      expectedBackOn: row.expected_back_on,
      isLate: isLate({ row, day: today(context) }),
      inPlaceOf: rows.find(({ id }) => id === row.replaces_id)?.unit_serial ?? null,
      quotedModel: row.quoted_model,
      notice: noticed.get(row.id)?.number ?? null,
      spares: swappable
        ? freeUnits({ units: alike, bookings, window, turnaroundDays }).map(({ serial }) => serial)
        : [],
    };
  });
}

function laterOf(a: string, b: string): string {
  return a < b ? b : a;
}

function isLate({ row, day }: { readonly row: BookingUnitRow; readonly day: string }): boolean {
  return row.state === 'out' && row.ends_before <= day;
}

/** Others who count on units that are out past their last day, as it stands today. */
function hitsNow(context: Context, booking: BookingRow): readonly Hit[] {
  const db = context.database.db;
  const day = today(context);
  const kept = unitsOfBooking(db, booking.id)
    .filter((row) => isLate({ row, day }))
    .map((row) => ({
      id: row.id,
      serial: row.unit_serial,
      window: { starts_on: row.starts_on, ends_before: addDays(laterOf(row.expected_back_on ?? day, day), 1) },
    }));
  return kept.length === 0 ? [] : hitsOf(db, wayFor(db, { context, kept }));
}
