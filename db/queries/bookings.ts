/*
 * Reads and writes bookings and what they hold: units by serial number, counted pieces by number.
 * Invariant: rows are written inside the transaction that decided on them.
 * Not here: deciding what is free (lib/stock), the history and the notices (booking-history.ts).
 * Read next: ../schema/booking-unit.ts, booking-history.ts.
 */
import { and, eq, gt, inArray, isNotNull, isNull, lte, ne, not, notInArray, or, type SQL } from 'drizzle-orm';
import { HOLDING_STATES } from '#lib/stock/booking-life.ts';
import type { DbOrTx } from '../client.ts';
import { booking } from '../schema/booking.ts';
import { bookingItem } from '../schema/booking-item.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { quote } from '../schema/quote.ts';
import { unit } from '../schema/unit.ts';

/** A quote whose booking has come to nothing is open again. */
const COME_TO_NOTHING = ['cancelled', 'lapsed'];
const LEFT_THE_BOOKING = ['swapped', 'released'];

export type BookingRow = typeof booking.$inferSelect;
export type BookingUnitRow = typeof bookingUnit.$inferSelect;
export type BookingItemRow = typeof bookingItem.$inferSelect;

interface Engaged {
  /** The moment that decides whether a hold has run out. */
  readonly at: string;
  /** What the quotes of this enquiry hold stands free to it. */
  readonly besideEnquiry?: number | undefined;
}

/** Every row that holds its unit, but for holds that have run out. */
export function engagedBookingUnits(db: DbOrTx, engaged: Engaged): readonly BookingUnitRow[] {
  return db
    .select({ row: bookingUnit })
    .from(bookingUnit)
    .innerJoin(booking, eq(booking.id, bookingUnit.booking_id))
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .where(and(inArray(bookingUnit.state, [...HOLDING_STATES]), ...stillHeld(engaged)))
    .all()
    .map(({ row }) => row);
}

export function engagedBookingItems(db: DbOrTx, engaged: Engaged): readonly BookingItemRow[] {
  return db
    .select({ row: bookingItem })
    .from(bookingItem)
    .innerJoin(booking, eq(booking.id, bookingItem.booking_id))
    .leftJoin(quote, eq(quote.id, booking.quote_id))
    .where(and(inArray(bookingItem.state, [...HOLDING_STATES]), ...stillHeld(engaged)))
    .all()
    .map(({ row }) => row);
}

function stillHeld({ at, besideEnquiry }: Engaged): readonly (SQL | undefined)[] {
  return [
    or(ne(booking.state, 'held'), isNull(booking.held_until), gt(booking.held_until, at)),
    besideEnquiry === undefined ? undefined : or(isNull(quote.id), ne(quote.enquiry_id, besideEnquiry)),
  ];
}

/** Holds that ran out and still have to be written down as lapsed. */
export function holdsRunOut(db: DbOrTx, at: string): readonly BookingRow[] {
  return db
    .select()
    .from(booking)
    .where(and(eq(booking.state, 'held'), isNotNull(booking.held_until), lte(booking.held_until, at)))
    .orderBy(booking.id)
    .all();
}

/** Bookings of all revisions of an enquiry's quote, but those that were cancelled or lapsed. */
export function bookingsOfEnquiry(db: DbOrTx, enquiryId: number): readonly BookingRow[] {
  return db
    .select({ row: booking })
    .from(booking)
    .innerJoin(quote, eq(quote.id, booking.quote_id))
    .where(and(eq(quote.enquiry_id, enquiryId), notInArray(booking.state, COME_TO_NOTHING)))
    .all()
    .map(({ row }) => row);
}

export interface BookedUnit {
  readonly serial: string;
  readonly model: string;
  readonly starts_on: string;
  readonly ends_before: string;
}

/** The units of a booking, in the order they were chosen, without those that were released or swapped. */
export function bookedUnits(db: DbOrTx, bookingId: number): readonly BookedUnit[] {
  return db
    .select({
      serial: bookingUnit.unit_serial,
      model: unit.model_number,
      starts_on: bookingUnit.starts_on,
      ends_before: bookingUnit.ends_before,
    })
    .from(bookingUnit)
    .innerJoin(unit, eq(unit.serial, bookingUnit.unit_serial))
    .where(and(eq(bookingUnit.booking_id, bookingId), not(inArray(bookingUnit.state, LEFT_THE_BOOKING))))
    .orderBy(bookingUnit.id)
    .all();
}

/** Every row of a booking, whatever became of it. */
export function unitsOfBooking(db: DbOrTx, bookingId: number): readonly BookingUnitRow[] {
  return db.select().from(bookingUnit).where(eq(bookingUnit.booking_id, bookingId)).orderBy(bookingUnit.id).all();
}

export function itemsOfBooking(db: DbOrTx, bookingId: number): readonly BookingItemRow[] {
  return db.select().from(bookingItem).where(eq(bookingItem.booking_id, bookingId)).orderBy(bookingItem.id).all();
}

export function unitOfBooking(db: DbOrTx, id: number): BookingUnitRow | undefined {
  return db.select().from(bookingUnit).where(eq(bookingUnit.id, id)).get();
}

export function bookingsById(db: DbOrTx, ids: readonly number[]): ReadonlyMap<number, BookingRow> {
  const rows = db
    .select()
    .from(booking)
    .where(inArray(booking.id, [...ids]))
    .all();
  return new Map(rows.map((row) => [row.id, row]));
}

export function findBooking(db: DbOrTx, number: string): BookingRow | undefined {
  return db.select().from(booking).where(eq(booking.number, number)).get();
}

export function findBookingById(db: DbOrTx, id: number): BookingRow | undefined {
  return db.select().from(booking).where(eq(booking.id, id)).get();
}

export function findBookingUnit(db: DbOrTx, id: number): BookingUnitRow | undefined {
  return db.select().from(bookingUnit).where(eq(bookingUnit.id, id)).get();
}

/** The one that stands; a quote may have had others that were cancelled or lapsed. */
export function bookingOfQuote(db: DbOrTx, quoteId: number): BookingRow | undefined {
  return db
    .select()
    .from(booking)
    .where(and(eq(booking.quote_id, quoteId), notInArray(booking.state, COME_TO_NOTHING)))
    .get();
}

export function insertBooking(db: DbOrTx, row: typeof booking.$inferInsert): number {
  return Number(db.insert(booking).values(row).returning({ id: booking.id }).get().id);
}

export function insertBookingUnit(db: DbOrTx, row: typeof bookingUnit.$inferInsert): BookingUnitRow {
  return db.insert(bookingUnit).values(row).returning().get();
}

export function insertBookingItem(db: DbOrTx, row: typeof bookingItem.$inferInsert): void {
  db.insert(bookingItem).values(row).run();
}

interface Change<Row> {
  readonly id: number;
  readonly set: Partial<Omit<Row, 'id'>>;
}

export function changeBooking(db: DbOrTx, { id, set }: Change<BookingRow>): void {
  db.update(booking).set(set).where(eq(booking.id, id)).run();
}

export function changeBookingUnit(db: DbOrTx, { id, set }: Change<BookingUnitRow>): void {
  db.update(bookingUnit).set(set).where(eq(bookingUnit.id, id)).run();
}

export function changeBookingItem(db: DbOrTx, { id, set }: Change<BookingItemRow>): void {
  db.update(bookingItem).set(set).where(eq(bookingItem.id, id)).run();
}
