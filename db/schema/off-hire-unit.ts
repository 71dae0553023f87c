/*
 * The units that an off-hire notice names: all of a booking, or some of them.
 * Invariant: a unit of a booking goes off hire once.
 * Not here: the notice itself (off-hire-notice.ts).
 * Read next: booking-unit.ts.
 */
import { integer, primaryKey, sqliteTable, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { bookingUnit } from './booking-unit.ts';
import { offHireNotice } from './off-hire-notice.ts';

export const offHireUnit = sqliteTable(
  'off_hire_unit',
  {
    notice_id: integer('notice_id')
      .notNull()
      .references(() => offHireNotice.id, { onDelete: 'restrict' }),
    booking_unit_id: integer('booking_unit_id')
      .notNull()
      .references(() => bookingUnit.id, { onDelete: 'restrict' }),
  },
  (table) => [
    primaryKey({ columns: [table.notice_id, table.booking_unit_id] }),
    uniqueIndex('off_hire_once').on(table.booking_unit_id),
  ],
);
