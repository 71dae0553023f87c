/*
 * Books equipment without a quote: for the house's own use, for a show or a trial, or while a quote is still being written.
 * Invariant: all is held or nothing; what is free is decided inside the transaction, after holds that ran out were let go.
 * Not here: booking what a quote promised (../quotes/accept-quote.ts).
 * Read next: hold-equipment.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addDays, type DateRange, isIsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { freePieces, houseFacts, houseModels, stockQuestion } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { chooseCounted } from '#lib/stock/choose-counted.ts';
import { chooseUnits } from '#lib/stock/choose-units.ts';
import { expireHoldsFirst } from './expire-holds.ts';
import { holdEquipment } from './hold-equipment.ts';

export interface EquipmentAsked {
  readonly needs: readonly { readonly model: string; readonly count: number }[];
  readonly startsOn: string;
  readonly endsBefore: string;
  /** Moment at which it lapses unless somebody confirms it; null where it does not. */
  readonly heldUntil: string | null;
  /** Code of the depot that sends it out; empty for the first. */
  readonly depot: string;
  readonly why: string;
}

export interface EquipmentBooked {
  readonly number: string;
  readonly serials: readonly string[];
}

/** Nobody books further ahead, nor for longer. House practice, no source. */
const MOST_DAYS = 730;
const MOST_PIECES = 1000;

export function bookEquipment(context: Context, asked: EquipmentAsked): Result<EquipmentBooked> {
  const allowed = authorise(context, 'book equipment');
  if (!allowed.ok) return allowed;
  const sane = askedWell(context, asked);
  if (!sane.ok) return sane;
  return context.database.db.transaction(
    (tx) => {
      expireHoldsFirst(tx, context);
      return book(tx, { context, asked, window: sane.value });
    },
    { behavior: 'immediate' },
  );
}

function askedWell(context: Context, asked: EquipmentAsked): Result<DateRange> {
  const { startsOn, endsBefore, needs, why, heldUntil } = asked;
  if (needs.length === 0 || needs.some(({ count }) => !Number.isInteger(count) || count < 1 || count > MOST_PIECES))
    return failed({ code: 'nothing-asked', sentence: 'Say which models and how many of each, one at least.' });
  if (why.trim() === '')
    return failed({
      code: 'reason-missing',
      sentence: 'Say what the equipment is booked for: there is no quote to tell it.',
    });
  const readable = isIsoDate(startsOn) && isIsoDate(endsBefore) && startsOn < endsBefore;
  if (!readable || endsBefore > addDays(startsOn, MOST_DAYS) || startsOn > addDays(today(context), MOST_DAYS))
    return failed({
      code: 'date-unreadable',
      sentence: 'Give a first and a last day, in this order and within two years.',
    });
  if (endsBefore <= today(context))
    return failed({ code: 'dates-past', sentence: 'These days are past: book from today on.' });
  if (heldUntil !== null && !(Date.parse(heldUntil) > Date.parse(timestamp(context))))
    return failed({ code: 'moment-unreadable', sentence: 'The moment until which it is held lies ahead.' });
  const known = new Set(houseModels(context).map(({ number }) => number));
  const stranger = needs.find(({ model }) => !known.has(model));
  if (stranger !== undefined)
    return failed({
      code: 'no-such-model',
      sentence: `The catalogue has no model ${stranger.model.slice(0, 40)} for hire.`,
    });
  return ok({ starts_on: startsOn, ends_before: endsBefore });
}

interface Booking {
  readonly context: Context;
  readonly asked: EquipmentAsked;
  readonly window: DateRange;
}

function book(tx: DbOrTx, { context, asked, window }: Booking): Result<EquipmentBooked> {
  const { needs, heldUntil, why } = asked;
  const depot = asked.depot === '' ? (houseFacts(context).depots[0]?.code ?? '') : asked.depot;
  const counted = new Set(
    houseModels(context)
      .filter((model) => model.counted)
      .map(({ number }) => number),
  );
  const question = stockQuestion(context, { window });
  const units = chooseUnits({ ...question, needs: needs.filter(({ model }) => !counted.has(model)), depot });
  if (!units.ok) return units;
  const items = chooseCounted({
    needs: needs.filter(({ model }) => counted.has(model)),
    free: freePieces(context, { window }),
    window,
  });
  if (!items.ok) return items;
  const number = holdEquipment(tx, {
    context,
    quote: null,
    units: units.value,
    items: items.value,
    window,
    heldUntil: heldUntil === null ? null : new Date(heldUntil).toISOString(),
    depot,
    note: why.trim(),
  });
  const serials = units.value.map(({ serial }) => serial);
  const detail = { needs, ...window, serials, why: why.trim() };
  logChange(tx, {
    context,
    deed: { action: 'equipment booked without a quote', subject: `booking ${number}`, detail },
  });
  return ok({ number, serials });
}
