/*
 * Serial-numbered pieces: where each stands, in what state, how long it has run, and when its checks were done and fall due.
 * Invariant: a serial number is unique over all models; every change leaves a row in its history.
 * Not here: bookings (booking-unit.ts), the history (unit-event.ts).
 * Read next: unit-event.ts.
 */
import { index, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
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
    /** Days on which the newest certificates were made out; null where none is kept. */
    inspection_done_on: text('inspection_done_on'),
    calibration_done_on: text('calibration_done_on'),
    run_hours: real('run_hours').notNull().default(0),
    note: text('note').notNull().default(''),
  },
  (table) => [index('unit_by_model').on(table.model_number), index('unit_by_bay').on(table.depot, table.bay)],
);
