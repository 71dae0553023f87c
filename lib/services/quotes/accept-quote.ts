/*
 * Accepts an issued quote and holds the units for it, serial by serial, over the hire window.
 * Invariant: all units are held or none; what is free is decided inside the transaction, and the database refuses an overlap by itself.
 * Not here: picking and packing in the yard.
 * Read next: quote-standing.ts, ../../stock/choose-units.ts, ../../../db/triggers.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { bookedUnits, bookingOfQuote, bookingsOfEnquiry } from '#db/queries/bookings.ts';
import { changeEnquiry as changeRow } from '#db/queries/enquiries.ts';
import { changeQuoteState, findQuote, listQuotes, type QuoteRow } from '#db/queries/quotes.ts';
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { moveByDeed } from '#lib/services/enquiries/move-enquiry.ts';
import { freePieces, houseFacts, stockQuestion } from '#lib/services/house/house-facts.ts';
import { expireHoldsFirst } from '#lib/services/yard/expire-holds.ts';
import { type EquipmentHold, endOfDay, holdEquipment } from '#lib/services/yard/hold-equipment.ts';
import { chooseCounted } from '#lib/stock/choose-counted.ts';
import { chooseUnits } from '#lib/stock/choose-units.ts';
import { optionInputs, optionOf, type PapersInput } from './papers-of.ts';
import { quoteStanding } from './quote-standing.ts';

export interface HeldBooking {
  readonly number: string;
  readonly serials: readonly string[];
}

export interface Acceptance {
  readonly quoteId: number;
  /** Who said yes for the customer. */
  readonly acceptedBy?: string;
  /** Number of the customer's order; needed where the customer's terms say so. */
  readonly orderNumber?: string;
  /** How long it is held unconfirmed, where the terms do not say it. */
  readonly heldHours?: number;
  /** Slot of the option ordered, where the quote offers several. */
  readonly option?: number;
}

export function acceptQuote(context: Context, acceptance: Acceptance): Result<HeldBooking> {
  const allowed = authorise(context, 'book equipment');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => accept(tx, { context, acceptance }), { behavior: 'immediate' });
}

interface Accepting {
  readonly context: Context;
  readonly acceptance: Acceptance;
}

function accept(tx: DbOrTx, { context, acceptance }: Accepting): Result<HeldBooking> {
  expireHoldsFirst(tx, context);
  const quote = findQuote(tx, acceptance.quoteId);
  if (!quote)
    return failed({
      code: 'no-such-quote',
      sentence: 'That quote was never issued; look at the list of issued quotes.',
    });
  const before = bookingOfQuote(tx, quote.id);
  if (before) return ok({ number: before.number, serials: bookedUnits(tx, before.id).map(({ serial }) => serial) });
  const standing = quoteStanding({
    quote,
    quotes: listQuotes(tx, quote.enquiry_id),
    bookings: bookingsOfEnquiry(tx, quote.enquiry_id),
    today: today(context),
  });
  if ('reason' in standing) return failed(standing.reason);
  const ordered = orderedOption({ papers: JSON.parse(quote.frozen_json) as PapersInput, acceptance });
  if (!ordered.ok) return ordered;
  const chosen = unitsFor(context, ordered.value);
  if (!chosen.ok) return chosen;
  return ok(hold(tx, { context, acceptance, quote, slot: ordered.value.option?.slot ?? 0, ...chosen.value }));
}

/** The option that the customer ordered, with what the terms ask of an order. */
function orderedOption({
  papers,
  acceptance,
}: {
  readonly papers: PapersInput;
  readonly acceptance: Acceptance;
}): Result<PapersInput> {
  const options = optionInputs(papers);
  const slot = options.length === 1 ? 0 : acceptance.option;
  const ordered = slot === undefined ? undefined : optionOf(papers, slot);
  if (ordered === undefined) {
    return failed({
      code: 'option-missing',
      sentence: `This quote offers ${options.length} options: say which of them the customer ordered.`,
    });
  }
  if (ordered.payment?.orderNumber === 'asked for' && (acceptance.orderNumber ?? '').trim() === '') {
    return failed({
      code: 'order-number-missing',
      sentence: "This customer's terms ask for an order number: type it in, then accept.",
    });
  }
  return ok(ordered);
}

type Chosen = Pick<EquipmentHold, 'units' | 'items' | 'window' | 'depot'>;

/** Units for everything in the kits that has serial numbers and a number of what is counted, over the dates that were quoted. */
function unitsFor(context: Context, { outcome, models, site }: PapersInput): Result<Chosen> {
  const window = rangeOfDays(site.startsOn, site.days);
  if (window.ends_before <= today(context)) {
    return failed({
      code: 'dates-past',
      sentence: `The hire would have ended before ${window.ends_before}, which is past: set new dates, plan again and issue a revision.`,
    });
  }
  const pieces = outcome.kits.flatMap((kit) => kit.items).map(({ item, count }) => ({ model: item, count }));
  const depot = houseFacts(context).depots[0]?.code ?? '';
  const serialised = new Set(
    models.filter((model) => !model.counted && !model.madeToOrder).map(({ number }) => number),
  );
  const needs = pieces.filter(({ model }) => serialised.has(model));
  const chosen = chooseUnits({ ...stockQuestion(context, { window }), needs, depot });
  if (!chosen.ok) return takenMeanwhile(chosen.reason);
  const counted = new Set(models.filter((model) => model.counted && !model.madeToOrder).map(({ number }) => number));
  const items = chooseCounted({
    needs: pieces.filter(({ model }) => counted.has(model)),
    free: freePieces(context, { window }),
    window,
  });
  return items.ok ? ok({ units: chosen.value, items: items.value, window, depot }) : takenMeanwhile(items.reason);
}

function takenMeanwhile({ code, sentence }: Refused): Failed<Refused> {
  return failed({
    code,
    sentence: `Equipment was taken meanwhile, so nothing was booked. ${sentence} Plan again: what was free has changed.`,
  });
}

/** To the end of a day by the terms, or for a number of hours. */
function heldUntil(context: Context, { heldHours }: Acceptance): string {
  if (heldHours === undefined) return endOfDay(addDays(today(context), houseFacts(context).terms.holdDays));
  return new Date(context.now().getTime() + heldHours * 3_600_000).toISOString();
}

interface Holding extends Accepting, Chosen {
  readonly quote: QuoteRow;
  readonly slot: number;
}

function hold(tx: DbOrTx, { context, acceptance, quote, slot, ...chosen }: Holding): HeldBooking {
  const { acceptedBy = '', orderNumber = '' } = acceptance;
  const number = holdEquipment(tx, {
    context,
    quote: { id: quote.id, slot },
    ...chosen,
    heldUntil: heldUntil(context, acceptance),
    acceptedBy,
    orderNumber,
  });
  changeQuoteState(tx, {
    id: quote.id,
    state: 'accepted',
    reason: '',
    by: context.actor.name,
    at: timestamp(context),
  });
  changeRow(tx, { id: quote.enquiry_id, at: timestamp(context), set: {} });
  const why = `${quote.number} ${quote.revision}`;
  moveByDeed(tx, { context, enquiryId: quote.enquiry_id, by: 'quote accepted', to: 'accepted', why });
  const serials = chosen.units.map((unit) => unit.serial);
  addAuditEntry(tx, {
    at: timestamp(context),
    who: context.actor,
    action: 'quote accepted, units held',
    subject: `enquiry ${quote.enquiry_id}`,
    detail_json: JSON.stringify({ booking: number, option: slot, serials, acceptedBy, orderNumber }),
  });
  return { number, serials };
}
