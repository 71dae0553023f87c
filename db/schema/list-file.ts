/*
 * The customer's original list, byte for byte, with how its columns were read and what became of every row.
 * Invariant: bytes and sha256 never change once stored.
 * Not here: the lines themselves (schedule-line.ts).
 * Read next: schedule-line.ts.
 */
import { blob, index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const listFile = sqliteTable(
  'list_file',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    file_name: text('file_name').notNull(),
    bytes: blob('bytes', { mode: 'buffer' }).notNull(),
    sha256: text('sha256').notNull(),
    received_at: text('received_at').notNull(),
    /** Sheet and mapping as confirmed; null until taken. */
    mapping_json: text('mapping_json'),
    /** Counts, rows set aside, refused rows and their reasons; null until taken. */
    outcome_json: text('outcome_json'),
  },
  (table) => [index('list_file_by_enquiry').on(table.enquiry_id)],
);
