/*
 * Customers of the house.
 * Invariant: a customer is never deleted while an enquiry names it.
 * Not here: sites (an enquiry keeps the facts of its own site).
 * Read next: enquiry.ts.
 */
import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const customer = sqliteTable('customer', {
  id: integer('id').primaryKey({ autoIncrement: true }),
  code: text('code').notNull().unique(),
  name: text('name').notNull(),
  facts_json: text('facts_json').notNull(),
  created_at: text('created_at').notNull(),
});
