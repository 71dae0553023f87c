/*
 * A stocktake of a depot or of one bay of it: opened, scanned into, closed or given up.
 * Invariant: a depot has one open stocktake at the most; nothing about a unit changes before it is closed.
 * Not here: what was scanned (stocktake-scan.ts, stocktake-item.ts).
 * Read next: stocktake-scan.ts.
 */
import { sql } from 'drizzle-orm';
import { check, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';

export const stocktake = sqliteTable(
  'stocktake',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    number: text('number').notNull().unique(),
    depot: text('depot').notNull(),
    /** Empty where the whole depot is counted. */
    bay: text('bay').notNull().default(''),
    state: text('state').notNull(),
    opened_at: text('opened_at').notNull(),
    opened_by_id: text('opened_by_id').notNull(),
    opened_by: text('opened_by').notNull(),
    closed_at: text('closed_at'),
    closed_by_id: text('closed_by_id').notNull().default(''),
    closed_by: text('closed_by').notNull().default(''),
    /** What came of it, as JSON, once it is closed. */
    outcome_json: text('outcome_json'),
  },
  (table) => [
    uniqueIndex('stocktake_open').on(table.depot).where(sql`state = 'open'`),
    check('stocktake_state', sql`state IN ('open', 'closed', 'given up')`),
  ],
);
