/*
 * Discounts above the house's limit that one person asked for and another approved or refused.
 * Invariant: what was asked never changes, a decision is made once, and nothing is deleted; triggers in the database hold that.
 * Not here: whether an approval still holds for a price (lib/pricing/discount-approval.ts).
 * Read next: ../triggers.ts.
 */
import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { enquiry } from './enquiry.ts';

export const discountApproval = sqliteTable(
  'discount_approval',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    enquiry_id: integer('enquiry_id')
      .notNull()
      .references(() => enquiry.id, { onDelete: 'restrict' }),
    option_slot: integer('option_slot').notNull().default(0),
    /** What was priced when it was asked for. */
    asked_json: text('asked_json').notNull(),
    state: text('state').notNull(),
    reason: text('reason').notNull(),
    asked_by: text('asked_by').notNull(),
    asked_by_name: text('asked_by_name').notNull(),
    asked_at: text('asked_at').notNull(),
    decided_by: text('decided_by').notNull().default(''),
    decided_by_name: text('decided_by_name').notNull().default(''),
    decided_at: text('decided_at').notNull().default(''),
    decision_reason: text('decision_reason').notNull().default(''),
  },
  (table) => [index('discount_approval_by_enquiry').on(table.enquiry_id, table.option_slot, table.id)],
);
