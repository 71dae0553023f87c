/*
 * One coming back of equipment of a booking: when, where, who brought it, and what it may be contaminated with.
 * Invariant: contamination is declared when it is opened, before any piece can be checked in.
 * Not here: its pieces (return-piece.ts, return-count.ts).
 * Read next: return-piece.ts.
 */
import { sql } from 'drizzle-orm';
import { check, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const equipmentReturn = sqliteTable(
  'equipment_return',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'restrict' }),
    /** Returns of a booking are counted from 1. */
    sequence: integer('sequence').notNull(),
    depot: text('depot').notNull(),
    arrived_on: text('arrived_on').notNull(),
    brought_by: text('brought_by').notNull().default(''),
    /** One of CONTAMINATIONS (lib/stock/check-in.ts). */
    contamination: text('contamination').notNull(),
    /** The product by name where it is one; what else was said of it. */
    contamination_note: text('contamination_note').notNull().default(''),
    opened_at: text('opened_at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
  },
  (table) => [
    uniqueIndex('equipment_return_of_booking').on(table.booking_id, table.sequence),
    check('equipment_return_product', sql`contamination <> 'product' OR contamination_note <> ''`),
  ],
);
