/*
 * What changed in equipment, rates, house facts and house rules: who, when, before and after.
 * Invariant: rows are only ever added; versions of one subject rise.
 * Not here: the log of all actions (audit-entry.ts).
 * Read next: audit-entry.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const recordChange = sqliteTable(
  'record_change',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    /** `model D-112`, `rates D-112`, `house facts`, `house prices`, `house rules`. */
    subject: text('subject').notNull(),
    version: integer('version').notNull(),
    at: text('at').notNull(),
    who_id: text('who_id').notNull().default(''),
    who: text('who').notNull(),
    action: text('action').notNull(),
    before_json: text('before_json'),
    after_json: text('after_json'),
  },
  (table) => [index('record_change_by_subject').on(table.subject, table.id)],
);
