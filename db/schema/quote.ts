/*
 * Issued quotes by number and revision, frozen with everything they were worked from.
 * Invariant: an issued quote is never updated (but for its state) and never deleted; triggers in the database hold that.
 * Not here: the bytes of its papers (paper.ts).
 * Read next: paper.ts.
 */
import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const quote = sqliteTable(
  'quote',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'restrict' }),
    number: text('number').notNull(),
    revision: text('revision').notNull(),
    /** issued, accepted, declined or withdrawn; lapsed and superseded follow from dates and revisions. */
    state: text('state').notNull(),
    /** Why, by whom and when it got this state; empty while it is issued. */
    state_reason: text('state_reason').notNull().default(''),
    state_by: text('state_by').notNull().default(''),
    state_at: text('state_at').notNull().default(''),
    issued_on: text('issued_on').notNull(),
    valid_until: text('valid_until').notNull(),
    total_minor: integer('total_minor').notNull(),
    currency: text('currency').notNull(),
    frozen_json: text('frozen_json').notNull(),
  },
  (table) => [
    uniqueIndex('quote_number_revision').on(table.number, table.revision),
    index('quote_by_enquiry').on(table.enquiry_id),
  ],
);
