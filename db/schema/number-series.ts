/*
 * Running numbers without gaps (enquiries, quotes, bookings).
 * Invariant: a number is taken in the same transaction as the row that uses it.
 * Not here: how a number is printed (lib/services).
 * Read next: audit-entry.ts.
 */
import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const numberSeries = sqliteTable('number_series', {
  name: text('name').primaryKey(),
  next: integer('next').notNull(),
});
