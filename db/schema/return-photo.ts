/*
 * Photographs of a piece at its return.
 * Invariant: bytes and sha256 never change once stored (a trigger holds that); a photograph that is put away can be brought back.
 * Not here: files of an enquiry (attachment.ts).
 * Read next: work-order.ts.
 */
import { blob, index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { returnPiece } from './return-piece.ts';

export const returnPhoto = sqliteTable(
  'return_photo',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    piece_id: integer('piece_id')
      .notNull()
      .references(() => returnPiece.id, { onDelete: 'restrict' }),
    file_name: text('file_name').notNull(),
    mime: text('mime').notNull(),
    size_bytes: integer('size_bytes').notNull(),
    sha256: text('sha256').notNull(),
    bytes: blob('bytes', { mode: 'buffer' }).notNull(),
    added_at: text('added_at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    removed_at: text('removed_at'),
  },
  (table) => [index('return_photo_by_piece').on(table.piece_id)],
);
