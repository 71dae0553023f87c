/*
 * The history of a unit: every move, change of state, inspection, calibration and stocktake, with who and when.
 * Invariant: rows are only ever added, in the transaction that changes the unit; triggers in the database hold that.
 * Not here: the log of all actions (audit-entry.ts).
 * Read next: unit.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { unit } from './unit.ts';

export const unitEvent = sqliteTable(
  'unit_event',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    unit_serial: text('unit_serial')
      .notNull()
      .references(() => unit.serial, { onDelete: 'restrict' }),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    /** One of UNIT_EVENTS (lib/stock/unit-event.ts). */
    kind: text('kind').notNull(),
    /** What it was and what it became, as the person reads it: `VEN A01`, `ready`, a date; empty where there is none. */
    before: text('before').notNull().default(''),
    after: text('after').notNull().default(''),
    reason: text('reason').notNull().default(''),
    /** Number of the booking, transfer or stocktake that it belongs to; empty where there is none. */
    reference: text('reference').notNull().default(''),
  },
  (table) => [index('unit_event_by_unit').on(table.unit_serial, table.id)],
);
