/*
 * The Desk's word on a charge of a return: approved, changed or struck, with the reason, and the amount it was said about.
 * Invariant: one word a charge that holds; one that was said about another amount no longer holds and is asked for again.
 * Not here: the charges themselves, which are worked out from what was checked in (lib/pricing/return-charges.ts).
 * Read next: return-note.ts.
 */
import { sql } from 'drizzle-orm';
import { check, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';
import { returnNote } from './return-note.ts';

export const returnDecision = sqliteTable(
  'return_decision',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'restrict' }),
    /** Kind and subject of the charge, such as `repair piece 12`. */
    charge: text('charge').notNull(),
    /** `approved`, `changed` or `struck`. */
    decision: text('decision').notNull(),
    proposed_minor: integer('proposed_minor').notNull(),
    net_minor: integer('net_minor').notNull(),
    reason: text('reason').notNull().default(''),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    note_id: integer('note_id').references(() => returnNote.id, { onDelete: 'restrict' }),
  },
  (table) => [
    uniqueIndex('return_decision_once').on(table.booking_id, table.charge).where(sql`note_id IS NULL`),
    check('return_decision_reason', sql`decision = 'approved' OR reason <> ''`),
  ],
);
