/*
 * Another case for a booking, and packing that begins anew.
 * Invariant: a case that is added is one of the house's own; beginning anew takes nothing out of the booking.
 * Not here: putting pieces in (pack-piece.ts).
 * Read next: load-facts.ts.
 */
import { casesOfBooking, emptyLoad, insertCase } from '#db/queries/picking.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { caseKinds } from '#lib/packing/case-kinds.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { pickFacts } from '../picking/pick-facts.ts';
import { stillInTheYard } from '../picking/still-in-the-yard.ts';
import { withBooking } from '../with-booking.ts';
import { loadOfBooking, storeLoad } from './load-facts.ts';

export interface CaseAdded {
  readonly number: string;
  /** Name of the kind. */
  readonly name: string;
  readonly crew: number;
}

export function addCase(context: Context, { number, name, crew }: CaseAdded): Result<{ readonly case: number }> {
  return withBooking(context, {
    number,
    work: (tx, booking) => {
      const stays = stillInTheYard(booking);
      if (!stays.ok) return stays;
      const facts = pickFacts(tx, { context, booking });
      if (!caseKinds(facts.models).some((kind) => kind.name === name))
        return failed({ code: 'no-such-case', sentence: `The house has no case “${name}”.` });
      const load = loadOfBooking(tx, { context, facts });
      if (!load.isStored) storeLoad(tx, { bookingId: booking.id, load });
      const last = Math.max(0, ...casesOfBooking(tx, booking.id).map((one) => one.number));
      insertCase(tx, { booking_id: booking.id, number: last + 1, name, crew });
      logChange(tx, {
        context,
        deed: { action: 'case added', subject: `booking ${number}`, detail: { case: last + 1, name } },
      });
      return ok({ case: last + 1 });
    },
  });
}

export function packAnew(
  context: Context,
  { number }: { readonly number: string },
): Result<{ readonly number: string }> {
  return withBooking(context, {
    number,
    work: (tx, booking) => {
      const stays = stillInTheYard(booking);
      if (!stays.ok) return stays;
      emptyLoad(tx, booking.id);
      logChange(tx, { context, deed: { action: 'packing begun anew', subject: `booking ${number}` } });
      return ok({ number });
    },
  });
}
