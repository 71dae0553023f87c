/*
 * People at a customer.
 * Invariant: a contact with a site belongs to that site's customer; version grows by one with every change.
 * Not here: people of the house.
 * Read next: enquiry.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { customer } from './customer.ts';
import { site } from './site.ts';

export const contact = sqliteTable(
  'contact',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    customer_id: integer('customer_id')
      .notNull()
      .references(() => customer.id, { onDelete: 'restrict' }),
    site_id: integer('site_id').references(() => site.id, { onDelete: 'set null' }),
    name: text('name').notNull(),
    /** What the person does there. */
    position: text('position').notNull().default(''),
    email: text('email').notNull().default(''),
    telephone: text('telephone').notNull().default(''),
    note: text('note').notNull().default(''),
    version: integer('version').notNull().default(1),
    archived_at: text('archived_at'),
    created_at: text('created_at').notNull(),
    updated_at: text('updated_at').notNull(),
  },
  (table) => [index('contact_by_customer').on(table.customer_id, table.name)],
);
