/*
 * Every scan that a person of the yard sent, with the answer it got, under a key that the sender made up.
 * Invariant: a key is answered once; whoever sends it again gets the same answer and nothing is done twice.
 * Not here: what a scan does (lib/services/yard/picking).
 * Read next: pick-check.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const yardScan = sqliteTable(
  'yard_scan',
  {
    key: text('key').primaryKey(),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'cascade' }),
    /** What was asked, as it came. */
    asked_json: text('asked_json').notNull(),
    answer_json: text('answer_json').notNull(),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
  },
  (table) => [index('yard_scan_by_booking').on(table.booking_id)],
);
