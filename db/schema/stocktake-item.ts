/*
 * How many pieces of a counted model were found in a stocktake.
 * Invariant: one number a model; counting again replaces it.
 * Not here: units (stocktake-scan.ts).
 * Read next: stocktake.ts.
 */
import { sql } from 'drizzle-orm';
import { check, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { model } from './model.ts';
import { stocktake } from './stocktake.ts';

export const stocktakeItem = sqliteTable(
  'stocktake_item',
  {
    stocktake_id: integer('stocktake_id')
      .notNull()
      .references(() => stocktake.id, { onDelete: 'restrict' }),
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    count: integer('count').notNull(),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.stocktake_id, table.model_number] }),
    check('stocktake_item_count', sql`count >= 0`),
  ],
);
