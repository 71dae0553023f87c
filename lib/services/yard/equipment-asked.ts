/*
 * Whether what is asked to be booked without a quote can be meant: days, models, numbers, depot, and for whom.
 * Invariant: reads only; the same for trying and for booking.
 * Not here: what is free (try-booking.ts), booking it (book-equipment.ts).
 * Read next: book-equipment.ts.
 */
import { findCustomerByName } from '#db/queries/customers.ts';
import { addDays, type DateRange, isIsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { houseFacts, houseModels } from '#lib/services/house/house-facts.ts';
import type { BookingPurpose } from '#lib/stock/booking-purpose.ts';

/** What, where and when; enough to look what is free. */
export interface EquipmentWanted {
  readonly needs: readonly { readonly model: string; readonly count: number }[];
  readonly startsOn: string;
  readonly endsBefore: string;
  /** Code of the depot that sends it out; empty for the first. */
  readonly depot: string;
}

export interface EquipmentAsked extends EquipmentWanted {
  /** Moment at which it lapses unless somebody confirms it; null where it does not. */
  readonly heldUntil: string | null;
  readonly why: string;
  /** `other` where it is not said. */
  readonly purpose?: BookingPurpose;
  /** Name of the customer, where it is for one. */
  readonly customer?: string;
}

/** Nobody books further ahead, nor for longer. House practice, no source. */
const MOST_DAYS = 730;
const MOST_PIECES = 1000;

export interface WantedWell {
  readonly window: DateRange;
  readonly depot: string;
}

export function wantedWell(context: Context, wanted: EquipmentWanted): Result<WantedWell> {
  const { startsOn, endsBefore, needs } = wanted;
  if (needs.length === 0 || needs.some(({ count }) => !Number.isInteger(count) || count < 1 || count > MOST_PIECES))
    return failed({ code: 'nothing-asked', sentence: 'Say which models and how many of each, one at least.' });
  const readable = isIsoDate(startsOn) && isIsoDate(endsBefore) && startsOn < endsBefore;
  if (!readable || endsBefore > addDays(startsOn, MOST_DAYS) || startsOn > addDays(today(context), MOST_DAYS))
    return failed({
      code: 'date-unreadable',
      sentence: 'Give a first and a last day, in this order and within two years.',
    });
  if (endsBefore <= today(context))
    return failed({ code: 'dates-past', sentence: 'These days are past: book from today on.' });
  const known = new Map(houseModels(context).map((model) => [model.number, model]));
  const stranger = needs.find(({ model }) => known.get(model)?.madeToOrder !== false);
  if (stranger !== undefined)
    return failed({
      code: 'no-such-model',
      sentence: `The catalogue has no model ${stranger.model.slice(0, 40)} for hire.`,
    });
  const { depots } = houseFacts(context);
  const depot = wanted.depot === '' ? depots[0]?.code : depots.find(({ code }) => code === wanted.depot)?.code;
  if (depot === undefined) return failed({ code: 'no-such-depot', sentence: 'Choose the depot from which it leaves.' });
  return ok({ window: { starts_on: startsOn, ends_before: endsBefore }, depot });
}

export interface AskedWell extends WantedWell {
  /** Null where it is for the house itself. */
  readonly customerId: number | null;
}

export function askedWell(context: Context, asked: EquipmentAsked): Result<AskedWell> {
  const wanted = wantedWell(context, asked);
  if (!wanted.ok) return wanted;
  if (asked.why.trim() === '')
    return failed({
      code: 'reason-missing',
      sentence: 'Say what the equipment is booked for: there is no quote to tell it.',
    });
  if (asked.heldUntil !== null && !(Date.parse(asked.heldUntil) > Date.parse(timestamp(context))))
    return failed({ code: 'moment-unreadable', sentence: 'The moment until which it is held lies ahead.' });
  if (asked.purpose !== 'customer') return ok({ ...wanted.value, customerId: null });
  const name = (asked.customer ?? '').trim();
  if (name === '') return failed({ code: 'customer-missing', sentence: 'Say for which customer it is kept.' });
  const customer = findCustomerByName(context.database.db, name);
  if (customer === undefined || customer.archived_at !== null)
    return failed({
      code: 'no-such-customer',
      sentence: `There is no customer ${name.slice(0, 80)}: write the name as it stands in the list, or ask the Desk to add it.`,
    });
  return ok({ ...wanted.value, customerId: customer.id });
}
