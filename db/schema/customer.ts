/*
 * Customers of the house: who they are, and what is agreed with them as JSON.
 * Invariant: a customer is never deleted while an enquiry names it: it is archived; version grows by one with every change.
 * Not here: their places (site.ts) and people (contact.ts).
 * Read next: site.ts, contact.ts, enquiry.ts.
 */
import { sql } from 'drizzle-orm';
import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';

export const customer = sqliteTable(
  'customer',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    code: text('code').notNull().unique(),
    name: text('name').notNull(),
    facts_json: text('facts_json').notNull(),
    version: integer('version').notNull().default(1),
    /** When it was put away; null while it is in use. */
    archived_at: text('archived_at'),
    /** The one that stands for strangers who have not said who they are; no list, picker or search offers it. */
    placeholder: integer('placeholder', { mode: 'boolean' }).notNull().default(false),
    created_at: text('created_at').notNull(),
    updated_at: text('updated_at').notNull().default(''),
  },
  (table) => [
    index('customer_by_name').on(table.name),
    uniqueIndex('customer_placeholder_once').on(table.placeholder).where(sql`placeholder`),
  ],
);
