/*
 * What was tried before a booking leaves: a chain put together, a machine or limiter tested at torque, by whom, when and with what.
 * Invariant: a row names the serial numbers it was done with, so that a unit that is swapped later asks for it anew.
 * Not here: which checks a booking needs (lib/stock/pick-checks.ts).
 * Read next: ../../lib/services/yard/picking.
 */
import { sql } from 'drizzle-orm';
import { check, index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const pickCheck = sqliteTable(
  'pick_check',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'cascade' }),
    kind: text('kind').notNull(),
    /** Of a chain its id in the plan, of a function test the serial number. */
    subject: text('subject').notNull(),
    serials_json: text('serials_json').notNull(),
    passed: integer('passed', { mode: 'boolean' }).notNull(),
    /** Function test: where the limiter stood and what the instrument read. */
    set_nm: real('set_nm'),
    measured_nm: real('measured_nm'),
    instrument: text('instrument').notNull().default(''),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
  },
  (table) => [
    index('pick_check_by_booking').on(table.booking_id),
    check('pick_check_kind', sql`kind IN ('chain tried', 'function test')`),
  ],
);
