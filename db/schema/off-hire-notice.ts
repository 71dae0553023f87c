/*
 * The customer's numbered word that the hire of units ends: at which day and time, who said it, who took it down, and for which units.
 * Invariant: numbers run without gaps, and a notice is only ever added; triggers in the database hold that.
 * Not here: the return itself, which comes later, and what is charged (lib/pricing).
 * Read next: off-hire-unit.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const offHireNotice = sqliteTable(
  'off_hire_notice',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    number: text('number').notNull().unique(),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'restrict' }),
    /** When the customer gave notice: the day and the time. */
    noticed_at: text('noticed_at').notNull(),
    said_by: text('said_by').notNull(),
    /** When it was taken down, and by whom. */
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    note: text('note').notNull().default(''),
  },
  (table) => [index('off_hire_notice_by_booking').on(table.booking_id)],
);
