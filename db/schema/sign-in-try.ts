/*
 * Tries to sign in that have not succeeded, by what they are counted under: an address or an account.
 * Invariant: a try is written before its password is looked at, so that many at once are counted one by one.
 * Not here: how many are too many (lib/services/access/throttle.ts).
 * Read next: session.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const signInTry = sqliteTable(
  'sign_in_try',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    key: text('key').notNull(),
    at: text('at').notNull(),
  },
  (table) => [index('try_by_key').on(table.key, table.at)],
);
