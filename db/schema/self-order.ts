/*
 * Enquiries that somebody made without the Desk: how far they came, who they say they are, and why the Desk must look.
 * Invariant: one row an enquiry; a draft is nobody's work and stands in no list of the Desk.
 * Not here: the links to it (order-link.ts) and what was answered of each valve (line-answer.ts).
 * Read next: ../../lib/services/self-service/order-stage.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const selfOrder = sqliteTable(
  'self_order',
  {
    enquiry_id: integer('enquiry_id')
      .primaryKey()
      .references(() => enquiry.id, { onDelete: 'cascade' }),
    stage: text('stage').notNull(),
    stage_at: text('stage_at').notNull(),
    language: text('language').notNull(),
    /** Name, firm, mail address and telephone as they were typed. */
    contact_json: text('contact_json').notNull().default('{}'),
    /** Why it was handed over: code, facts and tag of each reason. */
    reasons_json: text('reasons_json').notNull().default('[]'),
    /** The enquiry whose lines these were before they were handed over apart; null otherwise. */
    from_enquiry_id: integer('from_enquiry_id').references(() => enquiry.id, { onDelete: 'set null' }),
    /** The customer whose key made it; null where a person did. */
    by_key_id: integer('by_key_id'),
    /** Who of the Desk took it over; empty while nobody has. */
    taken_by: text('taken_by').notNull().default(''),
    taken_name: text('taken_name').notNull().default(''),
    created_at: text('created_at').notNull(),
  },
  (table) => [index('self_order_by_stage').on(table.stage, table.stage_at)],
);
