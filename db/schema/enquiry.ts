/*
 * Enquiries: what a customer asks for, with the facts of the site and the choices made at the Desk.
 * Invariant: version grows by one with every change, so that two people never overwrite each other unseen.
 * Not here: the lines of the schedule (schedule-line.ts).
 * Read next: list-file.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { customer } from './customer.ts';

export const enquiry = sqliteTable(
  'enquiry',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    number: text('number').notNull().unique(),
    customer_id: integer('customer_id')
      .notNull()
      .references(() => customer.id, { onDelete: 'restrict' }),
    title: text('title').notNull(),
    state: text('state').notNull(),
    site_json: text('site_json').notNull(),
    /** Locked parts, excluded parts, pins. */
    constraints_json: text('constraints_json').notNull(),
    preference: text('preference').notNull(),
    /** Units that its papers print: `si` or `us`. */
    paper_units: text('paper_units').notNull().default('si'),
    version: integer('version').notNull().default(1),
    created_at: text('created_at').notNull(),
    updated_at: text('updated_at').notNull(),
  },
  (table) => [index('enquiry_by_state').on(table.state, table.updated_at)],
);
