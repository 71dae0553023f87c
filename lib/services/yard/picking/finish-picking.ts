/*
 * Says that a booking is picked: everything scanned and counted, nothing obligatory left behind, chains tried, machines tested.
 * Invariant: a booking with anything open stays as it is, and every reason is told.
 * Not here: packing and loading.
 * Read next: open-picking.ts.
 */
import { changeBookingItem } from '#db/queries/bookings.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import type { BookingState } from '#lib/stock/booking-life.ts';
import { stepUnits } from '../step-units.ts';
import { withBooking } from '../with-booking.ts';
import { pickingView } from './open-picking.ts';
import { pickFacts } from './pick-facts.ts';
import { stillInTheYard } from './still-in-the-yard.ts';

export function finishPicking(
  context: Context,
  { number }: { readonly number: string },
): Result<{ readonly state: BookingState }> {
  return withBooking(context, {
    number,
    work: (tx, booking) => {
      const stays = stillInTheYard(booking);
      if (!stays.ok) return stays;
      const facts = pickFacts(tx, { context, booking });
      const { open } = pickingView(tx, facts);
      if (open.length > 0)
        return failed({
          code: open.some((reason) => reason.startsWith('Cannot be left behind'))
            ? 'obligatory-missing'
            : 'picking-open',
          sentence: open.join(' '),
        });
      const units = facts.pieces.filter(({ row }) => row.state === 'allocated').map(({ row }) => row);
      if (units.length === 0 && facts.items.every(({ state }) => state !== 'allocated'))
        return failed({ code: 'picked-already', sentence: `${number} is picked already.` });
      for (const item of facts.items)
        if (item.state === 'allocated') changeBookingItem(tx, { id: item.id, set: { state: 'picked' } });
      const stepped = stepUnits(tx, { context, booking, units, to: 'picked', what: 'picked and tested' });
      if (!stepped.ok) return stepped;
      logChange(tx, {
        context,
        deed: { action: 'booking picked', subject: `booking ${number}`, detail: { units: units.length } },
      });
      return ok({ state: stepped.value });
    },
  });
}
