/*
 * The hire house: one row of facts (terms, delivery bands, taxes, rules) as the JSON that the house file holds.
 * Invariant: there is exactly one row, id 1.
 * Not here: rates of models (model.ts).
 * Read next: customer.ts.
 */
import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const house = sqliteTable('house', {
  id: integer('id').primaryKey(),
  facts_json: text('facts_json').notNull(),
  updated_at: text('updated_at').notNull(),
  /** Grows by one with every change, so that two people never overwrite each other unseen. */
  version: integer('version').notNull().default(1),
});
