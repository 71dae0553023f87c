/*
 * Plans worked out for an enquiry, one row a run over all preferences.
 * Invariant: input_hash names everything the plan was worked from; a plan is never edited, only followed by another.
 * Not here: issued quotes (quote.ts).
 * Read next: quote.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const plan = sqliteTable(
  'plan',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    /** The option of the quote that it is a plan for (quote-option.ts). */
    option_slot: integer('option_slot').notNull().default(0),
    input_hash: text('input_hash').notNull(),
    state: text('state').notNull(),
    result_json: text('result_json').notNull(),
    created_at: text('created_at').notNull(),
  },
  (table) => [index('plan_by_enquiry').on(table.enquiry_id, table.option_slot, table.id)],
);
