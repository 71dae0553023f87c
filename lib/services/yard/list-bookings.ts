/*
 * The list of bookings, narrowed by state, words, days and what is late.
 * Invariant: reads only; a page at a time, in order of the first day.
 * Not here: one booking with all that belongs to it (open-booking.ts).
 * Read next: ../../../db/queries/bookings-found.ts.
 */
import { bookingsPage, type FoundBooking } from '#db/queries/bookings-found.ts';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { BOOKING_STATES, ENDED_STATES, isBookingState } from '#lib/stock/booking-life.ts';
import { hasRunOut } from '#lib/stock/hold.ts';

const PAGE_ROWS = 50;

/** Beside the states themselves: all that still run, and those that are late. */
export const BOOKING_FILTERS = ['running', 'late', ...BOOKING_STATES, 'all'] as const;
export type BookingFilter = (typeof BOOKING_FILTERS)[number];

export interface BookingsWanted {
  readonly filter: string;
  readonly words: string;
  /** First and last day on which they run; empty where not narrowed. */
  readonly from: string;
  readonly until: string;
  readonly page: number;
}

export interface BookingRowView extends FoundBooking {
  /** Out past its last day. */
  readonly isLate: boolean;
  /** Nobody confirmed it in time. */
  readonly hasRunOut: boolean;
}

export interface BookingsView {
  readonly rows: readonly BookingRowView[];
  readonly total: number;
  readonly page: number;
  readonly pages: number;
  readonly filter: BookingFilter;
}

export function listBookings(context: Context, wanted: BookingsWanted): Result<BookingsView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const filter = BOOKING_FILTERS.find((one) => one === wanted.filter) ?? 'running';
  const day = today(context);
  const asked = {
    states: statesOf(filter),
    words: wanted.words.trim().slice(0, 100),
    from: isIsoDate(wanted.from) ? wanted.from : '',
    until: isIsoDate(wanted.until) ? wanted.until : '',
    lateOn: filter === 'late' ? day : null,
  };
  const page = Math.max(1, Math.floor(wanted.page) || 1);
  const { rows, total } = bookingsPage(context.database.db, { asked, page, size: PAGE_ROWS });
  return ok({
    rows: rows.map((row) => ({
      ...row,
      isLate: row.out > 0 && row.endsBefore !== null && row.endsBefore <= day,
      hasRunOut:
        isBookingState(row.state) &&
        hasRunOut({ state: row.state, heldUntil: row.heldUntil, now: new Date(timestamp(context)) }),
    })),
    total,
    page,
    pages: Math.max(1, Math.ceil(total / PAGE_ROWS)),
    filter,
  });
}

function statesOf(filter: BookingFilter): readonly string[] {
  if (filter === 'all' || filter === 'late') return [];
  if (filter !== 'running') return [filter];
  return BOOKING_STATES.filter((state) => !ENDED_STATES.some((ended) => ended === state));
}
