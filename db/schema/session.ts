/*
 * Browsers that are signed in. Removing a row ends the session at once.
 * Invariant: a session ends at a stated moment and is never prolonged.
 * Not here: the cookie that names it (lib/services/access/sign-in-library.ts).
 * Read next: user.ts.
 */
import { index, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { moment } from './moment.ts';
import { user } from './user.ts';

export const session = sqliteTable(
  'session',
  {
    id: text('id').primaryKey(),
    token: text('token').notNull().unique(),
    user_id: text('user_id')
      .notNull()
      .references(() => user.id, { onDelete: 'cascade' }),
    expires_at: moment('expires_at').notNull(),
    ip_address: text('ip_address'),
    user_agent: text('user_agent'),
    created_at: moment('created_at').notNull(),
    updated_at: moment('updated_at').notNull(),
  },
  (table) => [index('session_of_user').on(table.user_id)],
);
