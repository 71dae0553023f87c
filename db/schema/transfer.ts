/*
 * Equipment on its way from one depot to another.
 * Invariant: it goes between two different depots and arrives after it was sent; one that has arrived never moves again.
 * Not here: which pieces (transfer-unit.ts, transfer-item.ts).
 * Read next: transfer-unit.ts.
 */
import { sql } from 'drizzle-orm';
import { check, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const transfer = sqliteTable(
  'transfer',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    number: text('number').notNull().unique(),
    from_depot: text('from_depot').notNull(),
    to_depot: text('to_depot').notNull(),
    /** `on the way` until everything has arrived or is written off, then `arrived`. */
    state: text('state').notNull(),
    sent_on: text('sent_on').notNull(),
    /** First day on which it can be used at the other depot. */
    due_on: text('due_on').notNull(),
    arrived_on: text('arrived_on'),
    note: text('note').notNull().default(''),
    sent_by_id: text('sent_by_id').notNull(),
    sent_by: text('sent_by').notNull(),
    arrived_by_id: text('arrived_by_id').notNull().default(''),
    arrived_by: text('arrived_by').notNull().default(''),
  },
  () => [
    check('transfer_depots', sql`from_depot <> to_depot`),
    check('transfer_dates', sql`sent_on < due_on`),
    check('transfer_state', sql`state IN ('on the way', 'arrived')`),
  ],
);
