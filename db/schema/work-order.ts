/*
 * Work orders on units: washing, cleaning, inspecting, repairing, calibrating; who opened, did and closed them, and what came of it.
 * Invariant: a numbered order ends once, with a result or withdrawn; it is never deleted.
 * Not here: which step is allowed (lib/stock/work-order.ts).
 * Read next: unit.ts.
 */
import { sql } from 'drizzle-orm';
import { check, index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { returnPiece } from './return-piece.ts';
import { unit } from './unit.ts';

export const workOrder = sqliteTable(
  'work_order',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    number: text('number').notNull().unique(),
    unit_serial: text('unit_serial')
      .notNull()
      .references(() => unit.serial, { onDelete: 'restrict' }),
    /** One of WORK_KINDS. */
    kind: text('kind').notNull(),
    reason: text('reason').notNull(),
    /** The piece whose check-in asked for it; null where somebody opened it by hand. */
    piece_id: integer('piece_id').references(() => returnPiece.id, { onDelete: 'restrict' }),
    /** One of WORK_STATES. */
    state: text('state').notNull().default('open'),
    opened_at: text('opened_at').notNull(),
    opened_by: text('opened_by').notNull(),
    begun_at: text('begun_at'),
    begun_by: text('begun_by').notNull().default(''),
    ended_at: text('ended_at'),
    ended_by: text('ended_by').notNull().default(''),
    /** One of WORK_RESULTS; empty until it is done. */
    result: text('result').notNull().default(''),
    /** What was found and done. */
    done: text('done').notNull().default(''),
    hours: real('hours').notNull().default(0),
    parts_minor: integer('parts_minor').notNull().default(0),
  },
  (table) => [
    index('work_order_by_unit').on(table.unit_serial),
    index('work_order_by_state').on(table.state, table.id),
    check('work_order_state', sql`state IN ('open', 'doing', 'done', 'withdrawn')`),
    check('work_order_ended', sql`(state IN ('done', 'withdrawn')) = (ended_at IS NOT NULL)`),
  ],
);
