/*
 * One leaving of equipment for a booking: what was looked at, who loaded, who was shown how to use it, and who took it over and signed.
 * Invariant: once it has left it only changes by being taken back as a whole, with a reason; its despatch advice is kept byte for byte.
 * Not here: which pieces it holds (delivery-unit.ts, delivery-item.ts).
 * Read next: delivery-unit.ts.
 */
import { sql } from 'drizzle-orm';
import { blob, check, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { booking } from './booking.ts';

export const delivery = sqliteTable(
  'delivery',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    booking_id: integer('booking_id')
      .notNull()
      .references(() => booking.id, { onDelete: 'restrict' }),
    /** Deliveries of a booking are counted from 1. */
    sequence: integer('sequence').notNull(),
    /** `loading`, `left` or `taken back`. */
    state: text('state').notNull().default('loading'),
    depot: text('depot').notNull(),
    /** `road`, `air` or `sea`. */
    transport: text('transport').notNull(),
    /** Answers to the look at the load: question, words and who said yes, as JSON. */
    checks_json: text('checks_json').notNull().default('[]'),
    loaded_by: text('loaded_by').notNull().default(''),
    vehicle: text('vehicle').notNull().default(''),
    instructed_by: text('instructed_by').notNull().default(''),
    /** Points of the instruction that were gone through, as JSON. */
    instruction_json: text('instruction_json').notNull().default('[]'),
    handed_to: text('handed_to').notNull().default(''),
    /** `drawn` or `typed`; empty until it is signed. */
    signed_how: text('signed_how').notNull().default(''),
    signed_name: text('signed_name').notNull().default(''),
    signature_svg: text('signature_svg').notNull().default(''),
    left_at: text('left_at'),
    despatch_xml: blob('despatch_xml', { mode: 'buffer' }),
    despatch_sha256: text('despatch_sha256').notNull().default(''),
    opened_at: text('opened_at').notNull(),
    who_id: text('who_id').notNull(),
    who: text('who').notNull(),
    taken_back_why: text('taken_back_why').notNull().default(''),
  },
  (table) => [
    uniqueIndex('delivery_of_booking').on(table.booking_id, table.sequence),
    check('delivery_state', sql`state IN ('loading', 'left', 'taken back')`),
    check('delivery_left', sql`state = 'loading' OR left_at IS NOT NULL`),
  ],
);
