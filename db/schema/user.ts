/*
 * The people who may sign in: their role, and how they like figures to be shown.
 * Invariant: a user is disabled, never deleted, so that what the log says of a person stays true.
 * Not here: passwords (account.ts) and signed-in browsers (session.ts).
 * Read next: account.ts.
 */
import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { moment } from './moment.ts';

export const user = sqliteTable('user', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  /** In lower case. */
  email: text('email').notNull().unique(),
  /** Asked for by the sign-in library; the house sends no mail and never looks at it. */
  email_verified: integer('email_verified', { mode: 'boolean' }).notNull().default(false),
  image: text('image'),
  role: text('role', { enum: ['desk', 'yard', 'administrator', 'contractor'] }).notNull(),
  disabled_at: moment('disabled_at'),
  /** The password was made by the house and must be replaced at the next sign-in. */
  is_one_time: integer('is_one_time', { mode: 'boolean' }).notNull().default(false),
  /** Null: the units that the browser chose. */
  units: text('units', { enum: ['si', 'us'] }),
  date_form: text('date_form', { enum: ['written', 'iso', 'day-month-year', 'month-day-year'] })
    .notNull()
    .default('written'),
  decimal_mark: text('decimal_mark', { enum: ['point', 'comma'] })
    .notNull()
    .default('point'),
  /** Not asked for while the house prices in one currency; null: that one. */
  currency: text('currency'),
  created_at: moment('created_at').notNull(),
  updated_at: moment('updated_at').notNull(),
});
