/*
 * Keys by which a customer's own programs ask and order.
 * Invariant: only the hash of a key is kept, and its last letters to tell keys apart; a revoked key opens nothing.
 * Not here: what a key may do (lib/services/self-service/open-key.ts).
 * Read next: kept-answer.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { customer } from './customer.ts';

export const apiKey = sqliteTable(
  'api_key',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    customer_id: integer('customer_id')
      .notNull()
      .references(() => customer.id, { onDelete: 'cascade' }),
    name: text('name').notNull(),
    key_hash: text('key_hash').notNull().unique(),
    shown_end: text('shown_end').notNull(),
    created_at: text('created_at').notNull(),
    created_by: text('created_by').notNull(),
    /** Empty while it holds. */
    revoked_at: text('revoked_at').notNull().default(''),
    last_used_at: text('last_used_at').notNull().default(''),
  },
  (table) => [index('api_key_of_customer').on(table.customer_id)],
);
