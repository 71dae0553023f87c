/*
 * Changes of a schedule, one row a step that a person took: what other screens follow and what undo takes back.
 * Invariant: rows are only ever added; ids grow, so that a screen knows what it has seen.
 * Not here: the log for people (audit-entry.ts).
 * Read next: schedule-line.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const scheduleChange = sqliteTable(
  'schedule_change',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    at: text('at').notNull(),
    who: text('who').notNull(),
    /** Id of who did it; empty in what was kept before ids were. */
    who_id: text('who_id').notNull().default(''),
    /** The browser window that it came from; empty where it came from none. */
    screen: text('screen').notNull().default(''),
    /** What was done: `edited`, `added`, `removed`, `moved`, `list`, `undone`, `enquiry`. */
    kind: text('kind').notNull(),
    /** Cells before and after, lines added, removed and moved. */
    detail_json: text('detail_json').notNull(),
  },
  (table) => [index('schedule_change_by_enquiry').on(table.enquiry_id, table.id)],
);
