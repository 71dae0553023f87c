/*
 * Each time a hire was made longer: from which day to which, for which units, who asked for it, and who agreed.
 * Invariant: rows are only ever added; the units' own days (booking-unit.ts) are the truth, this says how they came about.
 * Not here: what it costs, which is worked from the days (lib/pricing).
 * Read next: booking-move.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const bookingExtension = sqliteTable(
  'booking_extension',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'cascade' }),
    ended_before: text('ended_before').notNull(),
    ends_before: text('ends_before').notNull(),
    /** Serial numbers as a JSON list. */
    serials_json: text('serials_json').notNull(),
    /** Who asked for it on the customer's side. */
    asked_by: text('asked_by').notNull().default(''),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    why: text('why').notNull().default(''),
  },
  (table) => [index('booking_extension_by_booking').on(table.booking_id)],
);
