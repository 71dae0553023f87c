/*
 * Enquiries: what a customer asks for, with the facts of the site and the choices made at the Desk.
 * Invariant: version grows by one with every change, so that two people never overwrite each other unseen.
 * Not here: the lines of the schedule (schedule-line.ts).
 * Read next: enquiry-move.ts, list-file.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { contact } from './contact.ts';
import { customer } from './customer.ts';
import { site } from './site.ts';

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
    /** The customer's site that site_json was copied from, and the version of it that was copied; null where it was typed here. */
    site_id: integer('site_id').references(() => site.id, { onDelete: 'restrict' }),
    site_version: integer('site_version'),
    contact_id: integer('contact_id').references(() => contact.id, { onDelete: 'restrict' }),
    /** Id and name of the person whose work it is; empty while it is nobody's. */
    assigned_to: text('assigned_to').notNull().default(''),
    assigned_name: text('assigned_name').notNull().default(''),
    /** The day by which the customer waits for an answer. */
    due_on: text('due_on'),
    /** What the customer calls it. */
    reference: text('reference').notNull().default(''),
    /** How it came: by telephone, by mail … */
    source: text('source').notNull().default(''),
    version: integer('version').notNull().default(1),
    created_at: text('created_at').notNull(),
    updated_at: text('updated_at').notNull(),
  },
  (table) => [
    index('enquiry_by_state').on(table.state, table.updated_at),
    index('enquiry_by_customer').on(table.customer_id),
    index('enquiry_by_site').on(table.site_id),
    index('enquiry_by_due_day').on(table.due_on),
  ],
);
