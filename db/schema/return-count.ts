/*
 * Counted pieces that came back with a return: how many, and how many of what was sold came back unused.
 * Invariant: a model stands once on a return; no more is unused than came back.
 * Not here: what was sent (delivery-item.ts).
 * Read next: return-decision.ts.
 */
import { sql } from 'drizzle-orm';
import { check, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { equipmentReturn } from './equipment-return.ts';
import { model } from './model.ts';

export const returnCount = sqliteTable(
  'return_count',
  {
    return_id: integer('return_id')
      .notNull()
      .references(() => equipmentReturn.id, { onDelete: 'restrict' }),
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    back: integer('back').notNull(),
    unused: integer('unused').notNull().default(0),
    /** How missing ones came to be lost, as for a piece with a serial number. */
    cause: text('cause').notNull().default('not known'),
    cause_words: text('cause_words').notNull().default(''),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    at: text('at').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.return_id, table.model_number] }),
    check('return_count_counts', sql`back >= 0 AND unused >= 0 AND unused <= back`),
  ],
);
