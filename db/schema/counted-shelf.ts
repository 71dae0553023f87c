/*
 * How many pieces of a counted model lie in which depot, and in which bay their box stands.
 * Invariant: a model has one shelf a depot; the sum over the depots stands in model.counted_stock, kept by triggers.
 * Not here: how many of them are held over which days (booking-item.ts), why a number changed (counted-event.ts).
 * Read next: counted-event.ts.
 */
import { sql } from 'drizzle-orm';
import { check, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { model } from './model.ts';

export const countedShelf = sqliteTable(
  'counted_shelf',
  {
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    depot: text('depot').notNull(),
    bay: text('bay').notNull().default(''),
    count: integer('count').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.model_number, table.depot] }),
    check('counted_shelf_count', sql`count >= 0`),
  ],
);
