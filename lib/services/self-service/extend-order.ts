/*
 * Keeping the equipment of an order longer: at once where everything stays free on the terms of the quote, otherwise by a word of the Desk.
 * Invariant: nobody else's booking is moved for it; asked again, nothing is doubled; why not is told without a count or a name.
 * Not here: extending itself (../yard/extend-booking.ts), and the Desk's word (answer-wish.ts).
 * Read next: order-hire.ts.
 */
import { type BookingRow, unitsOfBooking } from '#db/queries/bookings.ts';
import { insertWish, newestBookingOfEnquiry, settleWish, wishesOfBooking } from '#db/queries/order-hire.ts';
import { prolongLinks } from '#db/queries/self-orders.ts';
import { addDays, type IsoDate, isIsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { currencyDecimals } from '#lib/money/currency.ts';
import { handOverOfValue } from '#lib/questions/hand-over.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { hasEnded } from '#lib/stock/booking-life.ts';
import { bookingStateOf } from '../yard/booking-record.ts';
import { type Extended, extendBooking } from '../yard/extend-booking.ts';
import type { Earnest } from '../yard/with-booking.ts';
import { linksOpenUntil } from './link-days.ts';
import { type LinkAsked, type OpenOrder, openOrder, openToAct, wayIn } from './open-link.ts';
import { mayStayLonger } from './order-hire.ts';
import { selfServiceFacts } from './self-facts.ts';

export interface OrderExtension extends LinkAsked {
  /** The new last day of hire. */
  readonly until: string;
}

export type ExtensionAnswer =
  /** What more is to pay, before tax and waiver; null where nothing more is charged. */
  | {
      readonly kind: 'given';
      readonly until: IsoDate;
      readonly more_minor: number | null;
      readonly currency: string;
    }
  | { readonly kind: 'for the desk'; readonly until: IsoDate };

/** What the answer would be; writes nothing. */
export function tryOrderExtension(context: Context, { until, ...asked }: OrderExtension): Result<ExtensionAnswer> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openOrder(context, asked);
  if (!opened.ok) return opened;
  const found = extendable(context, { opened: opened.value, until });
  return found.ok ? ok(decided(opened.value.desk, { ...found.value, earnest: 'trial' }).answer) : found;
}

export function extendOrder(
  context: Context,
  { until, askedBy, ...asked }: OrderExtension & { readonly askedBy: string },
): Result<ExtensionAnswer> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToAct(context, asked);
  if (!opened.ok) return opened;
  const { order, desk } = opened.value;
  return context.database.db.transaction(
    (tx): Result<ExtensionAnswer> => {
      const found = extendable(context, { opened: opened.value, until });
      if (!found.ok) return found;
      const { booking, endsBefore } = found.value;
      const asking = { ...found.value, askedBy, why: `asked for ${wayIn(opened.value)}` };
      const first = decided(desk, { ...asking, earnest: 'trial' });
      if (first.answer.kind === 'for the desk') {
        wish(desk, { booking, endsBefore, askedBy, whyNot: first.whyNot });
        return ok(first.answer);
      }
      const done = decided(desk, { ...asking, earnest: 'for real' });
      settleWish(tx, { bookingId: booking.id, set: { ...settledNow(desk), settled: 'given' } });
      prolongLinks(tx, {
        enquiryId: order.enquiry_id,
        now: timestamp(context),
        until: linksOpenUntil(context, endsBefore),
      });
      return ok(done.answer);
    },
    { behavior: 'immediate' },
  );
}

interface Extendable {
  readonly booking: BookingRow;
  readonly endsBefore: IsoDate;
}

function extendable(
  context: Context,
  { opened, until }: { readonly opened: OpenOrder; readonly until: string },
): Result<Extendable> {
  const { db } = context.database;
  const booking = newestBookingOfEnquiry(db, opened.order.enquiry_id);
  if (booking === undefined || hasEnded(bookingStateOf(booking)) || booking.confirmed_at === null)
    return failed({ code: 'not-to-extend', sentence: 'Nothing that was confirmed for this order can be extended.' });
  const rows = unitsOfBooking(db, booking.id).filter(mayStayLonger);
  if (rows.length === 0)
    return failed({ code: 'not-to-extend', sentence: 'Nothing of this order is on hire or still to come.' });
  if (!isIsoDate(until)) return failed({ code: 'form-unreadable', sentence: 'Give the new last day as a date.' });
  const endsBefore = addDays(until, 1);
  if (rows.every(({ ends_before }) => ends_before >= endsBefore) || until < today(context))
    return failed({ code: 'extension-shorter', sentence: 'The new last day must be later than the one that stands.' });
  return ok({ booking, endsBefore });
}

interface Deciding extends Extendable {
  readonly askedBy?: string;
  readonly why?: string;
  readonly earnest: Earnest;
}

interface Decided {
  readonly answer: ExtensionAnswer;
  readonly whyNot: string;
}

/** At once only where nobody else is moved and the sum stays below what goes to a person. */
function decided(desk: Context, { booking, endsBefore, askedBy = '', why = '', earnest }: Deciding): Decided {
  const until = addDays(endsBefore, -1);
  const extension = { number: booking.number, endsBefore, serials: [], askedBy, why };
  const tried = extendBooking(desk, extension, earnest);
  const whyNot = tried.ok ? needsAWord(desk, tried.value) : tried.reason.code;
  if (whyNot !== '' || !tried.ok) return { answer: { kind: 'for the desk', until }, whyNot };
  const { hire } = tried.value;
  return {
    answer: {
      kind: 'given',
      until,
      more_minor: hire === null ? null : hire.after_minor - hire.before_minor,
      currency: hire?.currency ?? '',
    },
    whyNot,
  };
}

function needsAWord(desk: Context, { moved, hire }: Extended): string {
  if (moved.length > 0) return 'others-would-move';
  if (hire === null) return '';
  const minorPerUnit = 10 ** currencyDecimals(hire.currency);
  const limit = selfServiceFacts(desk).value_limit;
  const dear = handOverOfValue({ net_minor: hire.after_minor, minorPerUnit, limit });
  return dear.length > 0 ? 'value' : '';
}

interface Wishing extends Extendable {
  readonly askedBy: string;
  readonly whyNot: string;
}

/** One waits at a time: the same again is the one that is there, another takes its place. */
function wish(desk: Context, { booking, endsBefore, askedBy, whyNot }: Wishing): void {
  const { db } = desk.database;
  const [newest] = wishesOfBooking(db, booking.id);
  if (newest?.settled === '' && newest.ends_before === endsBefore) return;
  settleWish(db, { bookingId: booking.id, set: { ...settledNow(desk), settled: 'replaced' } });
  insertWish(db, {
    ...{ booking_id: booking.id, ends_before: endsBefore, asked_by: askedBy },
    ...{ asked_at: timestamp(desk), why_not: whyNot },
  });
  logChange(db, {
    context: desk,
    deed: { action: 'self-service: extension asked for', subject: `booking ${booking.number}`, detail: { endsBefore } },
  });
}

function settledNow(desk: Context) {
  return { settled_at: timestamp(desk), settled_by: desk.actor.name, answer: '' };
}
