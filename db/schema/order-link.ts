/*
 * Links by which somebody without an account comes back to what they asked for.
 * Invariant: only the hash of a link's secret is kept; an expired or withdrawn link opens nothing.
 * Not here: what has become of the order (self-order.ts).
 * Read next: self-order.ts, ../../lib/services/self-service/open-link.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const orderLink = sqliteTable(
  'order_link',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    token_hash: text('token_hash').notNull().unique(),
    /** `order`: may change and accept; `look`: may only look. */
    scope: text('scope').notNull(),
    created_at: text('created_at').notNull(),
    expires_at: text('expires_at').notNull(),
    /** Empty while it holds. */
    withdrawn_at: text('withdrawn_at').notNull().default(''),
    last_used_at: text('last_used_at').notNull().default(''),
  },
  (table) => [index('order_link_of_enquiry').on(table.enquiry_id)],
);
