/*
 * Changes one booking: finds it in a transaction of its own, after holds that ran out were let go, and takes everything back where the answer is no.
 * Invariant: a refusal leaves nothing behind, and a trial never does.
 * Not here: what is changed.
 * Read next: extend-booking.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow, BookingUnitRow } from '#db/queries/bookings.ts';
import { unitsOfBooking } from '#db/queries/bookings.ts';
import { keepOrTakeBack } from '#db/take-back.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { hasEnded } from '#lib/stock/booking-life.ts';
import { bookingNumbered, bookingStateOf } from './booking-record.ts';
import { expireHoldsFirst } from './expire-holds.ts';

/** A trial answers what would be, and writes nothing. */
export type Earnest = 'trial' | 'for real';

interface Work<Value> {
  readonly number: string;
  readonly earnest?: Earnest;
  readonly work: (tx: DbOrTx, booking: BookingRow) => Result<Value>;
}

export function withBooking<Value>(context: Context, { number, earnest, work }: Work<Value>): Result<Value> {
  const allowed = authorise(context, 'book equipment');
  if (!allowed.ok) return allowed;
  return keepOrTakeBack<DbOrTx, Result<Value>>(
    (within) => context.database.db.transaction(within, { behavior: 'immediate' }),
    (tx) => {
      expireHoldsFirst(tx, context);
      const found = bookingNumbered(tx, number);
      const answer = found.ok ? work(tx, found.value) : found;
      return { answer, outcome: answer.ok && earnest !== 'trial' ? 'kept' : 'taken back' };
    },
  );
}

export function stillRuns(booking: BookingRow): Result<true> {
  if (!hasEnded(bookingStateOf(booking))) return ok(true);
  return failed({
    code: 'booking-ended',
    sentence: `Booking ${booking.number} is ${booking.state}: nothing more can be done with it.`,
  });
}

interface Named {
  readonly booking: BookingRow;
  /** Serial numbers; none means all that the caller allows. */
  readonly serials: readonly string[];
  readonly may: (row: BookingUnitRow) => boolean;
  /** What those are, such as `on hire`. */
  readonly are: string;
}

/** Rows of the booking that are meant: each that was named must be one of those that may be. */
export function unitsNamed(tx: DbOrTx, { booking, serials, may, are }: Named): Result<readonly BookingUnitRow[]> {
  const rows = unitsOfBooking(tx, booking.id).filter(may);
  const wrong = serials.find((serial) => !rows.some(({ unit_serial }) => unit_serial === serial));
  if (wrong !== undefined)
    return failed({ code: 'unit-not-so', sentence: `${wrong} is not ${are} in booking ${booking.number}.` });
  if (rows.length === 0)
    return failed({ code: 'no-unit-so', sentence: `Nothing of booking ${booking.number} is ${are}.` });
  return ok(serials.length === 0 ? rows : rows.filter(({ unit_serial }) => serials.includes(unit_serial)));
}
