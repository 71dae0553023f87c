/*
 * Reads which bookings hold a unit or a model, and whose they are.
 * Invariant: reads only; what has let go of the unit is left out.
 * Not here: what is free (lib/stock).
 * Read next: bookings.ts.
 */
import { and, asc, eq, gte, inArray, isNull, or } from 'drizzle-orm';
import { HOLDING_STATES } from '#lib/stock/booking-life.ts';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingItem } from '../schema/booking-item.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { customer } from '../schema/customer.ts';
import { enquiry } from '../schema/enquiry.ts';
import { quote } from '../schema/quote.ts';
import { unit } from '../schema/unit.ts';

const WHOSE = {
  booking: booking.number,
  state: bookingUnit.state,
  startsOn: bookingUnit.starts_on,
  endsBefore: bookingUnit.ends_before,
  enquiryId: enquiry.id,
  customer: customer.name,
};

export interface UnitEngagement {
  readonly serial: string;
  readonly booking: string;
  readonly state: string;
  readonly startsOn: string;
  readonly endsBefore: string;
  readonly enquiryId: number | null;
  readonly customer: string | null;
}

/** Of one unit, those still to come or running, the first first. */
export function engagementsOfUnit(db: DbOrTx, serial: string): readonly UnitEngagement[] {
  return db
    .select({ ...WHOSE, serial: bookingUnit.unit_serial })
    .from(bookingUnit)
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .leftJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .leftJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(and(eq(bookingUnit.unit_serial, serial), inArray(bookingUnit.state, [...HOLDING_STATES])))
    .orderBy(asc(bookingUnit.starts_on))
    .all();
}

/** Of all units of some models, those that end on or after a day or are still out. */
export function engagementsOfModels(
  db: DbOrTx,
  { models, from }: { readonly models: readonly string[]; readonly from: string },
): readonly UnitEngagement[] {
  return db
    .select({ ...WHOSE, serial: bookingUnit.unit_serial })
    .from(bookingUnit)
    .innerJoin(unit, eq(unit.serial, bookingUnit.unit_serial))
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .leftJoin(enquiry, eq(enquiry.id, quote.enquiry_id))
    .leftJoin(customer, eq(customer.id, enquiry.customer_id))
    .where(
      and(
        inArray(unit.model_number, [...models]),
        inArray(bookingUnit.state, [...HOLDING_STATES]),
        or(gte(bookingUnit.free_again_on, from), and(eq(bookingUnit.state, 'out'), isNull(bookingUnit.back_on))),
      ),
    )
    .orderBy(asc(bookingUnit.starts_on), asc(booking.number))
    .all();
}

/** Numbers of all bookings that hold units, by id. */
export function bookingNumbers(db: DbOrTx): ReadonlyMap<number, string> {
  return new Map(
    db
      .select({ id: booking.id, number: booking.number })
      .from(booking)
      .all()
      .map(({ id, number }) => [id, number]),
  );
}

/** Depots that the bookings of counted pieces leave from; empty where it was not kept. */
export function depotsOfItems(db: DbOrTx): ReadonlyMap<number, string> {
  return new Map(
    db
      .select({ id: bookingItem.id, depot: booking.depot })
      .from(bookingItem)
      .innerJoin(booking, eq(booking.id, bookingItem.booking_id))
      .all()
      .map(({ id, depot }) => [id, depot]),
  );
}
