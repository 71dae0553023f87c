/*
 * Writes a new booking that holds chosen units and counted pieces over a window, until a stated moment.
 * Invariant: all is held or nothing: the database refuses a unit that is taken, and the whole transaction goes back.
 * Not here: choosing the units (lib/stock/choose-units.ts); authorising and the log of the house, which the verb that calls this does.
 * Read next: ../quotes/accept-quote.ts, expire-holds.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { insertBooking, insertBookingItem, insertBookingUnit } from '#db/queries/bookings.ts';
import { takeNumber } from '#db/queries/house.ts';
import { addDays, type DateRange } from '#lib/kernel/date-range.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import type { BookingPurpose } from '#lib/stock/booking-purpose.ts';
import type { Unit } from '#lib/stock/unit.ts';
import { recordMove } from './booking-record.ts';

export interface EquipmentHold {
  readonly context: Context;
  /** The quote it is held for, and the option of it; null where equipment is withdrawn for other reasons. */
  readonly quote: { readonly id: number; readonly slot: number } | null;
  readonly units: readonly Unit[];
  readonly items: readonly { readonly model: string; readonly count: number }[];
  readonly window: DateRange;
  /** Moment at which it lapses unless somebody confirms it (ISO 8601, UTC); null where it does not. */
  readonly heldUntil: string | null;
  readonly depot: string;
  readonly acceptedBy?: string;
  readonly orderNumber?: string;
  readonly note?: string;
  /** Without a quote: what it is for, and for whom. */
  readonly purpose?: BookingPurpose;
  readonly customerId?: number | null;
}

/** Answers the number of the new booking. */
export function holdEquipment(tx: DbOrTx, hold: EquipmentHold): string {
  const { context, quote, window, units, items } = hold;
  const number = `B-${String(takeNumber(tx, 'booking')).padStart(5, '0')}`;
  const bookingId = insertBooking(tx, {
    number,
    quote_id: quote?.id ?? null,
    option_slot: quote?.slot ?? 0,
    state: 'held',
    held_until: hold.heldUntil,
    note: hold.note ?? '',
    purpose: hold.purpose ?? '',
    customer_id: hold.customerId ?? null,
    accepted_on: quote === null ? null : today(context),
    accepted_by: hold.acceptedBy ?? '',
    order_number: hold.orderNumber ?? '',
    depot: hold.depot,
  });
  const days = { ...window, free_again_on: addDays(window.ends_before, houseFacts(context).turnaroundDays) };
  for (const unit of units) insertBookingUnit(tx, { booking_id: bookingId, unit_serial: unit.serial, ...days });
  for (const { model, count } of items) {
    insertBookingItem(tx, { booking_id: bookingId, model_number: model, count, ...days });
  }
  recordMove(tx, {
    context,
    bookingId,
    unit: null,
    what: 'held',
    from: 'held',
    to: 'held',
    detail: `${units.length} units from ${window.starts_on} to before ${window.ends_before}`,
  });
  return number;
}

/** Where a number of days is agreed: to the end of the last of them. */
export function endOfDay(day: string): string {
  return `${day}T23:59:59.000Z`;
}
