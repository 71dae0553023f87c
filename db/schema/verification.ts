/*
 * Proofs that a mail arrived, which the sign-in library wants a table for.
 * Invariant: empty, as the house sends no mail.
 * Not here: passwords (account.ts).
 * Read next: account.ts.
 */
import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { moment } from './moment.ts';

export const verification = sqliteTable('verification', {
  id: text('id').primaryKey(),
  identifier: text('identifier').notNull(),
  value: text('value').notNull(),
  expires_at: moment('expires_at').notNull(),
  created_at: moment('created_at').notNull(),
  updated_at: moment('updated_at').notNull(),
});
