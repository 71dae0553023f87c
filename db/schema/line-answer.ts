/*
 * What the person at a valve said they do not know, and the photo they sent of it.
 * Invariant: one row a line; what they do know stands in the line's own cells.
 * Not here: the cells (schedule-line.ts) and the bytes of the photo (attachment.ts).
 * Read next: self-order.ts.
 */
import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { attachment } from './attachment.ts';
import { scheduleLine } from './schedule-line.ts';

export const lineAnswer = sqliteTable('line_answer', {
  line_id: integer('line_id')
    .primaryKey()
    .references(() => scheduleLine.id, { onDelete: 'cascade' }),
  /** Columns answered with “I don't know”. */
  unknown_json: text('unknown_json').notNull().default('[]'),
  photo_id: integer('photo_id').references(() => attachment.id, { onDelete: 'set null' }),
});
