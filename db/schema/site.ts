/*
 * Places of a customer with the facts that hold there for every job.
 * Invariant: facts_json is read by lib/contracts/site.ts; version grows by one with every change, so that an enquiry knows which state it copied.
 * Not here: dates, crews and days, which belong to the enquiry; the enquiry's own copy of the facts (enquiry.ts).
 * Read next: contact.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { customer } from './customer.ts';

export const site = sqliteTable(
  'site',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    customer_id: integer('customer_id')
      .notNull()
      .references(() => customer.id, { onDelete: 'restrict' }),
    name: text('name').notNull(),
    /** Lines of the address, one under the other. */
    address: text('address').notNull().default(''),
    /** How to get in, whom to report to. */
    access_note: text('access_note').notNull().default(''),
    facts_json: text('facts_json').notNull(),
    version: integer('version').notNull().default(1),
    archived_at: text('archived_at'),
    created_at: text('created_at').notNull(),
    updated_at: text('updated_at').notNull(),
  },
  (table) => [index('site_by_customer').on(table.customer_id, table.name)],
);
