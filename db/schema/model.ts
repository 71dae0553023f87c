/*
 * Models that can be hired, with their typed facts as catalogue JSON.
 * Invariant: facts_json passes the schema of lib/contracts/equipment.ts.
 * Not here: serial-numbered pieces (unit.ts).
 * Read next: unit.ts.
 */
import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const model = sqliteTable('model', {
  number: text('number').primaryKey(),
  role: text('role').notNull(),
  name: text('name').notNull(),
  facts_json: text('facts_json').notNull(),
  /** Pieces on the shelf of a counted model; null where every piece is a unit. */
  counted_stock: integer('counted_stock'),
});
