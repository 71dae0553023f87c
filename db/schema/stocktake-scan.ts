/*
 * Units that were scanned in a stocktake, and in which bay.
 * Invariant: a unit is found once a stocktake, where it was scanned last.
 * Not here: counted pieces (stocktake-item.ts).
 * Read next: stocktake.ts.
 */
import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { stocktake } from './stocktake.ts';
import { unit } from './unit.ts';

export const stocktakeScan = sqliteTable(
  'stocktake_scan',
  {
    stocktake_id: integer('stocktake_id')
      .notNull()
      .references(() => stocktake.id, { onDelete: 'restrict' }),
    unit_serial: text('unit_serial')
      .notNull()
      .references(() => unit.serial, { onDelete: 'restrict' }),
    bay: text('bay').notNull(),
    at: text('at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
  },
  (table) => [primaryKey({ columns: [table.stocktake_id, table.unit_serial] })],
);
