/*
 * Serial-numbered pieces on a delivery, and the case each travels in.
 * Invariant: a unit of a booking stands once on a delivery.
 * Not here: counted pieces (delivery-item.ts).
 * Read next: delivery-item.ts.
 */
import { index, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { bookingUnit } from './booking-unit.ts';
import { delivery } from './delivery.ts';

export const deliveryUnit = sqliteTable(
  'delivery_unit',
  {
    delivery_id: integer('delivery_id')
      .notNull()
      .references(() => delivery.id, { onDelete: 'cascade' }),
    booking_unit_id: integer('booking_unit_id')
      .notNull()
      .references(() => bookingUnit.id, { onDelete: 'restrict' }),
    /** The case it travels in, as its label says; empty where it goes loose. */
    case_label: text('case_label').notNull().default(''),
    loaded_at: text('loaded_at').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.delivery_id, table.booking_unit_id] }),
    index('delivery_unit_by_unit').on(table.booking_unit_id),
  ],
);
