/*
 * Models that can be hired, with their typed facts as catalogue JSON.
 * Invariant: facts_json passes the schema of lib/contracts/equipment.ts; a model is retired, never deleted.
 * Not here: serial-numbered pieces (unit.ts), dated rates (rate-card.ts) and what changed when (record-change.ts).
 * Read next: rate-card.ts.
 */
import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const model = sqliteTable('model', {
  number: text('number').primaryKey(),
  role: text('role').notNull(),
  name: text('name').notNull(),
  facts_json: text('facts_json').notNull(),
  /** Pieces of a counted model over all depots, which triggers add up from counted_shelf; null where every piece is a unit. */
  counted_stock: integer('counted_stock'),
  /** Grows by one with every change, so that two people never overwrite each other unseen. */
  version: integer('version').notNull().default(1),
  /** The day from which it is no longer chosen; null while it is. */
  retired_on: text('retired_on'),
});
