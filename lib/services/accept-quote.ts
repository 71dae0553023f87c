/*
 * Accepts an issued quote and holds the units for it, serial by serial, over the hire window.
 * Invariant: all units are held or none; what is free is decided inside the transaction, and the database refuses an overlap by itself.
 * Not here: picking and packing in the yard.
 * Read next: ../stock/choose-units.ts, ../../db/triggers.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { bookingOfQuote, insertBooking, insertBookingUnit, unitsOfBooking } from '#db/queries/bookings.ts';
import { changeEnquiry as changeRow } from '#db/queries/enquiries.ts';
import { takeNumber } from '#db/queries/house.ts';
import { changeQuoteState, findQuote } from '#db/queries/quotes.ts';
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { chooseUnits } from '#lib/stock/choose-units.ts';
import { authorise } from './authorise.ts';
import { type Context, timestamp, today } from './context.ts';
import { houseFacts, stockQuestion } from './house-facts.ts';
import type { PapersInput } from './papers-of.ts';

export interface HeldBooking {
  readonly number: string;
  readonly serials: readonly string[];
}

export function acceptQuote(context: Context, input: { readonly quoteId: number }): Result<HeldBooking> {
  const allowed = authorise(context, 'book equipment');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => accept(tx, { context, quoteId: input.quoteId }), {
    behavior: 'immediate',
  });
}

interface Accepting {
  readonly context: Context;
  readonly quoteId: number;
}

function accept(tx: DbOrTx, { context, quoteId }: Accepting): Result<HeldBooking> {
  const quote = findQuote(tx, quoteId);
  if (!quote)
    return failed({
      code: 'no-such-quote',
      sentence: 'That quote was never issued; look at the list of issued quotes.',
    });
  const before = bookingOfQuote(tx, quoteId);
  if (before)
    return ok({ number: before.number, serials: unitsOfBooking(tx, before.id).map((unit) => unit.unit_serial) });
  if (quote.valid_until < today(context)) {
    return failed({
      code: 'quote-lapsed',
      sentence: `The quote was valid until ${quote.valid_until}; issue a new revision.`,
    });
  }
  const { outcome, models, site } = JSON.parse(quote.frozen_json) as PapersInput;
  const window = rangeOfDays(site.startsOn, site.days);
  const counted = new Set(models.filter((model) => model.counted || model.madeToOrder).map((model) => model.number));
  const needs = outcome.kits
    .flatMap((kit) => kit.items)
    .filter(({ item }) => !counted.has(item))
    .map(({ item, count }) => ({ model: item, count }));
  const house = houseFacts(context);
  const chosen = chooseUnits({ ...stockQuestion(context, window), needs, depot: house.depots[0]?.code ?? '' });
  if (!chosen.ok) return chosen;
  const number = `B-${String(takeNumber(tx, 'booking')).padStart(5, '0')}`;
  const bookingId = insertBooking(tx, {
    number,
    quote_id: quoteId,
    state: 'held',
    held_until: addDays(today(context), house.terms.holdDays),
    note: '',
  });
  for (const unit of chosen.value) {
    insertBookingUnit(tx, {
      booking_id: bookingId,
      unit_serial: unit.serial,
      starts_on: window.starts_on,
      ends_before: window.ends_before,
      free_again_on: addDays(window.ends_before, house.turnaroundDays),
      active: true,
    });
  }
  changeQuoteState(tx, { id: quoteId, state: 'accepted' });
  changeRow(tx, { id: quote.enquiry_id, at: timestamp(context), set: { state: 'accepted' } });
  const serials = chosen.value.map((unit) => unit.serial);
  addAuditEntry(tx, {
    at: timestamp(context),
    who: context.actor.name,
    action: 'quote accepted, units held',
    subject: `enquiry ${quote.enquiry_id}`,
    detail_json: JSON.stringify({ booking: number, serials }),
  });
  return ok({ number, serials });
}
