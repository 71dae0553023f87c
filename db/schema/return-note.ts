/*
 * Return notes that were issued: the bytes of the paper, its hash, and what it was made from.
 * Invariant: bytes, hash and what was frozen never change and are never deleted; triggers in the database hold that.
 * Not here: what is proposed before a note is issued, which is worked out anew each time (lib/services/yard).
 * Read next: equipment-return.ts.
 */
import { blob, index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const returnNote = sqliteTable(
  'return_note',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    number: text('number').notNull().unique(),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'restrict' }),
    frozen_json: text('frozen_json').notNull(),
    bytes: blob('bytes', { mode: 'buffer' }).notNull(),
    sha256: text('sha256').notNull(),
    currency: text('currency').notNull(),
    gross_minor: integer('gross_minor').notNull(),
    issued_at: text('issued_at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
  },
  (table) => [index('return_note_by_booking').on(table.booking_id)],
);
