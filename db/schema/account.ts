/*
 * What proves a user: one salted scrypt hash of their password, in the form of the sign-in library.
 * Invariant: one account a user; no password is kept in clear.
 * Not here: roles (user.ts). The fields of sign-ins at other houses stay empty: the library wants them to exist.
 * Read next: session.ts.
 */
import { sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { moment } from './moment.ts';
import { user } from './user.ts';

export const account = sqliteTable(
  'account',
  {
    id: text('id').primaryKey(),
    account_id: text('account_id').notNull(),
    provider_id: text('provider_id').notNull(),
    user_id: text('user_id')
      .notNull()
      .references(() => user.id, { onDelete: 'cascade' }),
    password: text('password'),
    access_token: text('access_token'),
    access_token_expires_at: moment('access_token_expires_at'),
    refresh_token: text('refresh_token'),
    refresh_token_expires_at: moment('refresh_token_expires_at'),
    id_token: text('id_token'),
    scope: text('scope'),
    created_at: moment('created_at').notNull(),
    updated_at: moment('updated_at').notNull(),
  },
  (table) => [uniqueIndex('account_of_user').on(table.user_id, table.provider_id)],
);
