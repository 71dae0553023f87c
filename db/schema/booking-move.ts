/*
 * The history of a booking and of each unit in it: what was done, from which state to which, when, by whom and why.
 * Invariant: rows are only ever added, in the transaction that made the change; triggers in the database hold that.
 * Not here: which steps are allowed (lib/stock/booking-life.ts).
 * Read next: off-hire-notice.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const bookingMove = sqliteTable(
  'booking_move',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'cascade' }),
    /** The unit it was done to; null where it was done to the booking. */
    unit_serial: text('unit_serial'),
    /** What was done, in a few plain words such as `extended`. */
    what: text('what').notNull(),
    from_state: text('from_state').notNull(),
    to_state: text('to_state').notNull(),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    why: text('why').notNull().default(''),
    /** What else a person should read of it, such as the days before and after. */
    detail: text('detail').notNull().default(''),
  },
  (table) => [
    index('booking_move_by_booking').on(table.booking_id),
    index('booking_move_by_unit').on(table.unit_serial),
  ],
);
