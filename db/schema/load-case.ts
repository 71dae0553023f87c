/*
 * The cases of a booking as they are packed: which kind, for which crew.
 * Invariant: cases of a booking are counted from 1.
 * Not here: what lies in them (load-piece.ts) and what was proposed (lib/packing).
 * Read next: load-piece.ts.
 */
import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const loadCase = sqliteTable(
  'load_case',
  {
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'cascade' }),
    number: integer('number').notNull(),
    /** Name of the case, or `loose`. */
    name: text('name').notNull(),
    /** Crew, 1 … */
    crew: integer('crew').notNull(),
  },
  (table) => [primaryKey({ columns: [table.booking_id, table.number] })],
);
