/*
 * Which piece of a booking lies in which of its cases: a unit by serial number, counted pieces by number.
 * Invariant: a unit lies in one case of a booking; a piece that nobody has put in yet has no moment.
 * Not here: masses and marks, which follow from the models (lib/packing).
 * Read next: load-case.ts.
 */
import { sql } from 'drizzle-orm';
import { check, index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';
import { model } from './model.ts';
import { unit } from './unit.ts';

export const loadPiece = sqliteTable(
  'load_piece',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'cascade' }),
    case_number: integer('case_number').notNull(),
    /** Null for counted pieces. */
    unit_serial: text('unit_serial').references(() => unit.serial, { onDelete: 'restrict' }),
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    count: integer('count').notNull().default(1),
    packed_at: text('packed_at'),
    packed_by: text('packed_by').notNull().default(''),
  },
  (table) => [
    index('load_piece_by_booking').on(table.booking_id),
    uniqueIndex('load_piece_of_unit').on(table.booking_id, table.unit_serial),
    check('load_piece_count', sql`count > 0`),
  ],
);
