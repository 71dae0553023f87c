/*
 * Which unit is booked over which days, half-open: first day booked, first day free again (turnaround included).
 * Invariant: two active rows of one unit never overlap; triggers in the database hold that.
 * Not here: deciding which unit to take (lib/stock).
 * Read next: number-series.ts.
 */
import { sql } from 'drizzle-orm';
import { check, index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
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
    ends_before: text('ends_before').notNull(),
    free_again_on: text('free_again_on').notNull(),
    active: integer('active', { mode: 'boolean' }).notNull().default(true),
  },
  (table) => [
    index('booking_unit_by_unit').on(table.unit_serial, table.starts_on),
    check('booking_unit_dates', sql`starts_on < ends_before AND ends_before <= free_again_on`),
  ],
);
