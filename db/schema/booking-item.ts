/*
 * How many pieces of a counted model (pegs, pins, lanyards) a booking holds over which days.
 * Invariant: on no day are more held than the house counts; triggers in the database hold that.
 * Not here: how many the house has (model.ts), and what came back of them (the return).
 * Read next: booking-unit.ts.
 */
import { sql } from 'drizzle-orm';
import { check, index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';
import { model } from './model.ts';

export const bookingItem = sqliteTable(
  'booking_item',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'cascade' }),
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    count: integer('count').notNull(),
    starts_on: text('starts_on').notNull(),
    ends_before: text('ends_before').notNull(),
    free_again_on: text('free_again_on').notNull(),
    /** One of BOOKED_UNIT_STATES, all pieces together; a part that stays behind is another row. */
    state: text('state').notNull().default('held'),
  },
  (table) => [
    index('booking_item_by_model').on(table.model_number, table.starts_on),
    index('booking_item_by_booking').on(table.booking_id),
    check('booking_item_dates', sql`starts_on < ends_before AND ends_before <= free_again_on`),
    check('booking_item_count', sql`count > 0`),
  ],
);
