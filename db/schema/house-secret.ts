/*
 * Secrets that the house makes for itself, such as the key that signs its cookies.
 * Invariant: made once, never printed, never sent to a browser.
 * Not here: passwords (account.ts).
 * Read next: session.ts.
 */
import { sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const houseSecret = sqliteTable('house_secret', {
  name: text('name').primaryKey(),
  value: text('value').notNull(),
  created_at: text('created_at').notNull(),
});
