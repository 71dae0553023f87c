/*
 * Units of a transfer. While one is on its way it is free at neither depot.
 * Invariant: a unit is on one transfer at a time, and on none over days on which a booking holds it; triggers in the database hold that.
 * Not here: counted pieces (transfer-item.ts).
 * Read next: transfer.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { transfer } from './transfer.ts';
import { unit } from './unit.ts';

export const transferUnit = sqliteTable(
  'transfer_unit',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    transfer_id: integer('transfer_id')
      .notNull()
      .references(() => transfer.id, { onDelete: 'restrict' }),
    unit_serial: text('unit_serial')
      .notNull()
      .references(() => unit.serial, { onDelete: 'restrict' }),
    sent_on: text('sent_on').notNull(),
    due_on: text('due_on').notNull(),
    /** False once it has arrived or is written off. */
    active: integer('active', { mode: 'boolean' }).notNull().default(true),
  },
  (table) => [
    index('transfer_unit_by_unit').on(table.unit_serial),
    index('transfer_unit_by_transfer').on(table.transfer_id),
  ],
);
