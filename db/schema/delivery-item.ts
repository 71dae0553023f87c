/*
 * Counted pieces (pegs, pins, lanyards) on a delivery: how many of which model.
 * Invariant: a model stands once on a delivery.
 * Not here: what comes back of them (return-count.ts).
 * Read next: equipment-return.ts.
 */
import { sql } from 'drizzle-orm';
import { check, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { delivery } from './delivery.ts';
import { model } from './model.ts';

export const deliveryItem = sqliteTable(
  'delivery_item',
  {
    delivery_id: integer('delivery_id')
      .notNull()
      .references(() => delivery.id, { onDelete: 'cascade' }),
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    count: integer('count').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.delivery_id, table.model_number] }),
    check('delivery_item_count', sql`count > 0`),
  ],
);
