/*
 * Lines of a schedule: the text of every cell as the customer or the Desk wrote it.
 * Invariant: cells_json holds canonical column names only; a line is read from its cells, never stored twice.
 * Not here: what the cells mean (lib/intake).
 * Read next: plan.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const scheduleLine = sqliteTable(
  'schedule_line',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    position: integer('position').notNull(),
    /** Row of the list it came from; its own number for a line typed at the Desk. */
    row: integer('row').notNull(),
    cells_json: text('cells_json').notNull(),
    /** Columns whose value was measured on the valve. */
    measured_json: text('measured_json').notNull().default('[]'),
    version: integer('version').notNull().default(1),
    /** The cells as the newest list gave them; null for a line typed at the Desk. */
    listed_json: text('listed_json'),
  },
  (table) => [index('schedule_line_by_enquiry').on(table.enquiry_id, table.position)],
);
