/*
 * Who did what and when.
 * Invariant: rows are only ever added.
 * Not here: the data itself.
 * Read next: house.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

export const auditEntry = sqliteTable(
  'audit_entry',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    at: text('at').notNull(),
    who: text('who').notNull(),
    /** The user's id, `system` for the house itself; null in entries from before people signed in. */
    who_id: text('who_id'),
    action: text('action').notNull(),
    subject: text('subject').notNull(),
    detail_json: text('detail_json').notNull(),
  },
  (table) => [
    index('audit_by_subject').on(table.subject, table.id),
    index('audit_by_person').on(table.who_id, table.id),
  ],
);
