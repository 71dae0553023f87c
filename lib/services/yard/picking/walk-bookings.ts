/*
 * The bookings that leave on a day and are picked together on one walk; on the day itself also those that should have left before.
 * Invariant: reads only; what is only held is told apart, because it may lapse.
 * Not here: what lies in which bay (open-walk.ts).
 * Read next: open-walk.ts, walk-scan.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, findBooking } from '#db/queries/bookings.ts';
import { type Movement, movements } from '#db/queries/yard-today.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { type Context, today } from '#lib/services/context.ts';
import { type PickFacts, pickFacts } from './pick-facts.ts';

export interface WalkBooking {
  readonly movement: Movement;
  readonly booking: BookingRow;
  readonly facts: PickFacts;
}

interface WalkOf {
  readonly context: Context;
  readonly day: IsoDate;
}

/** Before they leave, in the order of their day and number. */
const STILL_HERE = ['held', 'confirmed', 'allocated', 'picked'];

export function walkBookings(db: DbOrTx, { context, day }: WalkOf): readonly WalkBooking[] {
  const isToday = day === today(context);
  return movements(db, { states: STILL_HERE, by: 'start', until: day })
    .filter(({ startsOn }) => startsOn === day || isToday)
    .flatMap((movement) => {
      const booking = findBooking(db, movement.booking);
      return booking === undefined ? [] : [{ movement, booking, facts: pickFacts(db, { context, booking }) }];
    });
}
