/*
 * Bays of the depots, in the order in which one walks past them.
 * Invariant: a depot has a bay of a name once.
 * Not here: what stands in a bay (unit.ts, counted-shelf.ts); the depots, which are facts of the house.
 * Read next: unit.ts.
 */
import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const bay = sqliteTable(
  'bay',
  {
    depot: text('depot').notNull(),
    code: text('code').notNull(),
    /** Place on the walk through the depot, from its door. */
    walk_order: integer('walk_order').notNull(),
    note: text('note').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.depot, table.code] })],
);
