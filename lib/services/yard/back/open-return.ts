/*
 * Opens a return: equipment of a booking stands in the yard, and what it may be contaminated with is declared before anyone touches it.
 * Invariant: no return without a declaration; a product has its name.
 * Not here: checking pieces in (check-in.ts).
 * Read next: check-in.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { unitsOfBooking } from '#db/queries/bookings.ts';
import { insertReturn, returnsOfBooking } from '#db/queries/returns.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { hasEnded } from '#lib/stock/booking-life.ts';
import type { Contamination } from '#lib/stock/check-in.ts';
import { bookingNumbered, bookingStateOf } from '../booking-record.ts';
import { isAwaited } from './find-piece.ts';
import { bookingEnded } from './return-record.ts';

export interface Declaration {
  readonly number: string;
  readonly depot: string;
  readonly broughtBy: string;
  readonly contamination: Contamination;
  /** The product by its name; what else was said. */
  readonly note: string;
}

export function openReturn(context: Context, declared: Declaration): Result<{ readonly id: number }> {
  const allowed = authorise(context, 'take equipment back');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => open(tx, { context, declared }), { behavior: 'immediate' });
}

interface Opening {
  readonly context: Context;
  readonly declared: Declaration;
}

function open(tx: DbOrTx, { context, declared }: Opening): Result<{ readonly id: number }> {
  const booking = bookingNumbered(tx, declared.number);
  if (!booking.ok) return booking;
  const state = bookingStateOf(booking.value);
  const isOut = unitsOfBooking(tx, booking.value.id).some(isAwaited);
  if (hasEnded(state) && !(state === 'closed' && isOut)) return bookingEnded(booking.value);
  if (!isOut)
    return failed({
      code: 'nothing-out',
      sentence: `Nothing of booking ${declared.number} is out, so nothing can come back.`,
    });
  const depot = houseFacts(context).depots.find(({ code }) => code === declared.depot);
  if (!depot) return failed({ code: 'no-such-depot', sentence: 'Choose the depot in which it stands.' });
  const note = declared.note.trim();
  if (declared.contamination === 'product' && note === '')
    return failed({
      code: 'product-unnamed',
      sentence: 'Name the product, or declare it unknown: whoever washes it must know what it is.',
    });
  const row = insertReturn(tx, {
    booking_id: booking.value.id,
    sequence: returnsOfBooking(tx, booking.value.id).length + 1,
    depot: depot.code,
    arrived_on: today(context),
    brought_by: declared.broughtBy.trim(),
    contamination: declared.contamination,
    contamination_note: note,
    opened_at: timestamp(context),
    ...whoIs(context),
  });
  const detail = { return: row.sequence, depot: depot.code, contamination: row.contamination, note };
  logChange(tx, { context, deed: { action: 'return opened', subject: `booking ${booking.value.number}`, detail } });
  return ok({ id: row.id });
}

export function whoIs(context: Context) {
  const { id, name } = actingPerson(context);
  return { who_id: id, who: name };
}
