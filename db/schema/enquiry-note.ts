/*
 * What people wrote about an enquiry, in order.
 * Invariant: a note is never removed: its author changes it for some minutes, later it is struck through.
 * Not here: how long that is (lib/enquiry).
 * Read next: attachment.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const enquiryNote = sqliteTable(
  'enquiry_note',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    text: text('text').notNull(),
    author_id: text('author_id').notNull(),
    author: text('author').notNull(),
    written_at: text('written_at').notNull(),
    changed_at: text('changed_at'),
    struck_at: text('struck_at'),
    struck_by: text('struck_by').notNull().default(''),
  },
  (table) => [index('enquiry_note_by_enquiry').on(table.enquiry_id)],
);
