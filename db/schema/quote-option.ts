/*
 * What is chosen for the price of an enquiry, one row an option that its quote offers: own lines, discounts, and for further options a plan of their own.
 * Invariant: slot 0 is the enquiry itself (crews, days and constraints stand in enquiry); a slot is never used again; version grows by one with every change.
 * Not here: what was issued (quote.ts keeps its own copy).
 * Read next: discount-approval.ts, ../../lib/contracts/price-choices.ts.
 */
import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const quoteOption = sqliteTable(
  'quote_option',
  {
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    slot: integer('slot').notNull(),
    choices_json: text('choices_json').notNull(),
    version: integer('version').notNull().default(1),
    /** Set when it was taken out; its slot stays taken. */
    removed_at: text('removed_at'),
    updated_at: text('updated_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.enquiry_id, table.slot] })],
);
