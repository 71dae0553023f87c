/*
 * An enquiry planned under other terms: the frontier of cost and days, each part left out, ways around a shortage. One row a kind and preference, the newest alone.
 * Invariant: input_hash names everything it was worked from.
 * Not here: the plans that are shown and quoted (plan.ts).
 * Read next: plan.ts.
 */
import { integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const study = sqliteTable(
  'study',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    kind: text('kind').notNull(),
    input_hash: text('input_hash').notNull(),
    state: text('state').notNull(),
    result_json: text('result_json').notNull(),
    created_at: text('created_at').notNull(),
  },
  (table) => [uniqueIndex('study_by_enquiry').on(table.enquiry_id, table.kind)],
);
