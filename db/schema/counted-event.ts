/*
 * Why the number of a counted model in a depot changed: counted, bought, used up, sent, arrived, back from a hire.
 * Invariant: rows are only ever added, in the transaction that changes the shelf; triggers in the database hold that.
 * Not here: the number itself (counted-shelf.ts).
 * Read next: counted-shelf.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { model } from './model.ts';

export const countedEvent = sqliteTable(
  'counted_event',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    depot: text('depot').notNull(),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    before: integer('before').notNull(),
    after: integer('after').notNull(),
    reason: text('reason').notNull(),
    /** Number of the booking, transfer or stocktake that it belongs to; empty where there is none. */
    reference: text('reference').notNull().default(''),
  },
  (table) => [index('counted_event_by_model').on(table.model_number, table.id)],
);
