/*
 * Bookings: equipment held for a quote or withdrawn for other reasons over dates.
 * Invariant: one that has ended holds no unit and no counted piece; triggers in the database hold that.
 * Not here: which unit is held when (booking-unit.ts), how it came so far (booking-move.ts).
 * Read next: booking-unit.ts, ../../lib/stock/booking-life.ts.
 */
import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { customer } from './customer.ts';
import { quote } from './quote.ts';

export const booking = sqliteTable('booking', {
  id: integer('id').primaryKey({ autoIncrement: true }),
  number: text('number').notNull().unique(),
  quote_id: integer('quote_id').references(() => quote.id, { onDelete: 'restrict' }),
  /** The option of the quote that was accepted. */
  option_slot: integer('option_slot').notNull().default(0),
  /** One of BOOKING_STATES. */
  state: text('state').notNull(),
  /** Moment at which a hold that nobody confirmed runs out (ISO 8601, UTC); null where none does. */
  held_until: text('held_until'),
  note: text('note').notNull().default(''),
  /** Without a quote: one of BOOKING_PURPOSES, and the customer where it is for one. */
  purpose: text('purpose').notNull().default(''),
  customer_id: integer('customer_id').references(() => customer.id, { onDelete: 'restrict' }),
  /** Day on which the customer said yes; null where equipment is withdrawn for other reasons. */
  accepted_on: text('accepted_on'),
  /** Who said yes for the customer, and under which order number; empty where it was not told. */
  accepted_by: text('accepted_by').notNull().default(''),
  order_number: text('order_number').notNull().default(''),
  /** Code of the depot that sends it out; empty in bookings from before it was kept. */
  depot: text('depot').notNull().default(''),
  confirmed_at: text('confirmed_at'),
  closed_at: text('closed_at'),
});
