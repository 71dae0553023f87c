/*
 * What a crew found at a valve on a day, as it was typed, kept for the next time that valve is met.
 * Invariant: one record a valve and day; a valve is a customer's, by the keys of its site and tag; cells_json holds found columns only.
 * Not here: what the cells mean (lib/found).
 * Read next: schedule-line.ts.
 */
import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { customer } from './customer.ts';
import { enquiry } from './enquiry.ts';

export const visitRecord = sqliteTable(
  'visit_record',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    customer_id: integer('customer_id')
      .notNull()
      .references(() => customer.id, { onDelete: 'restrict' }),
    /** Site and tag written alike (lib/found/valve-identity.ts), and as they stood. */
    site_key: text('site_key').notNull(),
    tag_key: text('tag_key').notNull(),
    site: text('site').notNull(),
    tag: text('tag').notNull(),
    /** Which of several identical valves of one line, from 1. */
    number: integer('number').notNull(),
    visited_on: text('visited_on').notNull(),
    cells_json: text('cells_json').notNull(),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'restrict' }),
    /** `quote Q-00012` or `enquiry E-00003`: where the visit belongs, as source sentences name it. */
    under: text('under').notNull(),
    /** Why the record is not to be used; empty while it is. */
    set_aside: text('set_aside').notNull().default(''),
    recorded_by: text('recorded_by').notNull(),
    recorded_at: text('recorded_at').notNull(),
  },
  (table) => [
    uniqueIndex('visit_record_of_valve_and_day').on(
      table.customer_id,
      table.site_key,
      table.tag_key,
      table.number,
      table.visited_on,
    ),
    index('visit_record_by_enquiry').on(table.enquiry_id),
  ],
);
