/*
 * Serial-numbered pieces: where each stands, in what state, and when its checks fall due.
 * Invariant: a serial number is unique over all models.
 * Not here: bookings (booking-unit.ts).
 * Read next: booking.ts.
 */
import { index, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { model } from './model.ts';

export const unit = sqliteTable(
  'unit',
  {
    serial: text('serial').primaryKey(),
    model_number: text('model_number')
      .notNull()
      .references(() => model.number, { onDelete: 'restrict' }),
    depot: text('depot').notNull(),
    bay: text('bay').notNull(),
    state: text('state').notNull(),
    inspection_due_on: text('inspection_due_on'),
    calibration_due_on: text('calibration_due_on'),
  },
  (table) => [index('unit_by_model').on(table.model_number)],
);
