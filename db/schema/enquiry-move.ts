/*
 * The steps of an enquiry's life: from which state to which, when, by whom and why.
 * Invariant: rows are only ever added, in the transaction that changes the state.
 * Not here: which steps are allowed (lib/enquiry).
 * Read next: enquiry-note.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const enquiryMove = sqliteTable(
  'enquiry_move',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    from_state: text('from_state').notNull(),
    to_state: text('to_state').notNull(),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    why: text('why').notNull().default(''),
  },
  (table) => [index('enquiry_move_by_enquiry').on(table.enquiry_id)],
);
