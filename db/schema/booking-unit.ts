/*
 * Which unit is booked over which days, half-open: first day booked, first day free again (turnaround included), and how far it is.
 * Invariant: two rows of one unit that hold it (HOLDING_STATES) never overlap; triggers in the database hold that.
 * Not here: deciding which unit to take (lib/stock).
 * Read next: ../../lib/stock/booking-life.ts.
 */
import { sql } from 'drizzle-orm';
import { type AnySQLiteColumn, check, index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';
import { unit } from './unit.ts';

export const bookingUnit = sqliteTable(
  'booking_unit',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'cascade' }),
    unit_serial: text('unit_serial')
      .notNull()
      .references(() => unit.serial, { onDelete: 'restrict' }),
    starts_on: text('starts_on').notNull(),
    /** Of the hire as agreed; an extension moves it. */
    ends_before: text('ends_before').notNull(),
    free_again_on: text('free_again_on').notNull(),
    /** One of BOOKED_UNIT_STATES. */
    state: text('state').notNull().default('held'),
    /** Days on which it left the house and came back; null while it did not. */
    out_on: text('out_on'),
    back_on: text('back_on'),
    /** What the customer said of a unit that is late. */
    expected_back_on: text('expected_back_on'),
    /** The row in whose place this one stands: a unit that failed, or one that was needed elsewhere. */
    replaces_id: integer('replaces_id').references((): AnySQLiteColumn => bookingUnit.id, { onDelete: 'restrict' }),
    /** The model that was quoted and is charged, where a unit of another model stands in for it; empty where it is its own. */
    quoted_model: text('quoted_model').notNull().default(''),
  },
  (table) => [
    index('booking_unit_by_unit').on(table.unit_serial, table.starts_on),
    index('booking_unit_by_booking').on(table.booking_id),
    check('booking_unit_dates', sql`starts_on < ends_before AND ends_before <= free_again_on`),
  ],
);
