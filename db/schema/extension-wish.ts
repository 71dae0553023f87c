/*
 * What owners of an order asked for by its link and the house could not give at once: to keep the equipment longer.
 * Invariant: at most one of a booking waits; one that was settled says how, when and by whom.
 * Not here: extensions that were made (booking-extension.ts).
 * Read next: ../../lib/services/self-service/extend-order.ts.
 */
import { sql } from 'drizzle-orm';
import { integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const extensionWish = sqliteTable(
  'extension_wish',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'cascade' }),
    /** First day that would no longer belong to the hire. */
    ends_before: text('ends_before').notNull(),
    asked_by: text('asked_by').notNull(),
    asked_at: text('asked_at').notNull(),
    /** Code of why it was not given at once. */
    why_not: text('why_not').notNull(),
    /** Empty while it waits; `given`, `declined` or `replaced` afterwards. */
    settled: text('settled').notNull().default(''),
    settled_at: text('settled_at').notNull().default(''),
    settled_by: text('settled_by').notNull().default(''),
    /** What the Desk says to it; the owner reads it. */
    answer: text('answer').notNull().default(''),
  },
  (table) => [uniqueIndex('extension_wish_waits').on(table.booking_id).where(sql`settled = ''`)],
);
