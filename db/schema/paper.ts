/*
 * The bytes of issued papers.
 * Invariant: bytes and their hash never change and are never deleted; triggers in the database hold that.
 * Not here: drafts, which are drawn anew each time.
 * Read next: booking.ts.
 */
import { blob, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { quote } from './quote.ts';

export const paper = sqliteTable(
  'paper',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    quote_id: integer('quote_id')
      .notNull()
      .references(() => quote.id, { onDelete: 'restrict' }),
    kind: text('kind').notNull(),
    bytes: blob('bytes', { mode: 'buffer' }).notNull(),
    sha256: text('sha256').notNull(),
    created_at: text('created_at').notNull(),
  },
  (table) => [uniqueIndex('paper_of_quote').on(table.quote_id, table.kind)],
);
