/*
 * One unit as it was checked in: condition, run hours, missing parts, what a repair would take, and how it happened.
 * Invariant: a unit of a booking is checked in once; what was undone stays as it was, marked, and no longer counts.
 * Not here: photographs (return-photo.ts), work it needs (work-order.ts), charges (worked out from this).
 * Read next: return-photo.ts.
 */
import { sql } from 'drizzle-orm';
import { check, index, integer, real, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { bookingUnit } from './booking-unit.ts';
import { equipmentReturn } from './equipment-return.ts';
import { returnNote } from './return-note.ts';

export const returnPiece = sqliteTable(
  'return_piece',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    return_id: integer('return_id')
      .notNull()
      .references(() => equipmentReturn.id, { onDelete: 'restrict' }),
    booking_unit_id: integer('booking_unit_id')
      .notNull()
      .references(() => bookingUnit.id, { onDelete: 'restrict' }),
    /** One of CONDITIONS (lib/stock/check-in.ts). */
    condition: text('condition').notNull(),
    /** On the counter of the machine; null where it has none or nobody looked. */
    run_hours: real('run_hours'),
    missing_parts: text('missing_parts').notNull().default(''),
    note: text('note').notNull().default(''),
    saw_overload: integer('saw_overload', { mode: 'boolean' }).notNull().default(false),
    /** What a repair would take, as it was judged at the return. */
    repair_hours: real('repair_hours').notNull().default(0),
    repair_parts_minor: integer('repair_parts_minor').notNull().default(0),
    /** How it came to be broken or lost: `not known`, `covered` or `left out`, and what of the terms leaves it out. */
    cause: text('cause').notNull().default('not known'),
    cause_words: text('cause_words').notNull().default(''),
    /** State and run hours of the unit before, so that it can be undone. */
    before_json: text('before_json').notNull(),
    checked_at: text('checked_at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    undone_at: text('undone_at'),
    undone_why: text('undone_why').notNull().default(''),
    note_id: integer('note_id').references(() => returnNote.id, { onDelete: 'restrict' }),
  },
  (table) => [
    index('return_piece_by_return').on(table.return_id),
    uniqueIndex('return_piece_once').on(table.booking_unit_id).where(sql`undone_at IS NULL AND condition <> 'missing'`),
    check('return_piece_run_hours', sql`run_hours IS NULL OR run_hours >= 0`),
  ],
);
