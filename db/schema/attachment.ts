/*
 * Files that belong to an enquiry: drawings, photographs, mails; the customer's list is kept in list_file.
 * Invariant: bytes and sha256 never change once stored; a file that is put away can be brought back.
 * Not here: the valve list (list-file.ts).
 * Read next: list-file.ts.
 */
import { blob, index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const attachment = sqliteTable(
  'attachment',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    file_name: text('file_name').notNull(),
    size_bytes: integer('size_bytes').notNull(),
    sha256: text('sha256').notNull(),
    bytes: blob('bytes', { mode: 'buffer' }).notNull(),
    added_by: text('added_by').notNull(),
    added_at: text('added_at').notNull(),
    /** When it was put away; null while it is shown. */
    removed_at: text('removed_at'),
  },
  (table) => [index('attachment_by_enquiry').on(table.enquiry_id)],
);
