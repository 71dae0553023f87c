/*
 * Answers to requests that must be carried out once, however often they are sent.
 * Invariant: one answer for each key of a scope; the same key with another request is a conflict, never a second deed.
 * Not here: which requests those are (lib/services/self-service/once.ts).
 * Read next: ../../lib/services/self-service/once.ts.
 */
import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';

export const keptAnswer = sqliteTable(
  'kept_answer',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    scope: text('scope').notNull(),
    key: text('key').notNull(),
    request_hash: text('request_hash').notNull(),
    answer_json: text('answer_json').notNull(),
    at: text('at').notNull(),
  },
  (table) => [uniqueIndex('kept_answer_by_key').on(table.scope, table.key), index('kept_answer_by_age').on(table.at)],
);
