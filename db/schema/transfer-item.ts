/*
 * Counted pieces of a transfer: how many were sent and how many arrived. They are off the one shelf until they lie on the other.
 * Invariant: no more arrive than were sent.
 * Not here: units (transfer-unit.ts).
 * Read next: transfer.ts.
 */
import { sql } from 'drizzle-orm';
import { check, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { model } from './model.ts';
import { transfer } from './transfer.ts';

export const transferItem = sqliteTable(
  'transfer_item',
  {
    transfer_id: integer('transfer_id')
      .notNull()
      .references(() => transfer.id, { onDelete: 'restrict' }),
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    count: integer('count').notNull(),
    /** Null while they are on their way. */
    arrived: integer('arrived'),
  },
  (table) => [
    primaryKey({ columns: [table.transfer_id, table.model_number] }),
    check('transfer_item_count', sql`count > 0 AND (arrived IS NULL OR (arrived >= 0 AND arrived <= count))`),
  ],
);
