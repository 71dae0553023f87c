/*
 * Reads and writes the options of an enquiry's quote, and the approvals of discounts above the limit.
 * Invariant: a change names the version it was made on; what somebody changed meanwhile is never overwritten.
 * Not here: what a choice means (lib/contracts/price-choices.ts) and who may decide (lib/services).
 * Read next: ../schema/quote-option.ts.
 */
import { and, asc, desc, eq, isNull, max, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { discountApproval } from '../schema/discount-approval.ts';
import { quoteOption } from '../schema/quote-option.ts';

export type OptionRow = typeof quoteOption.$inferSelect;
export type ApprovalRow = typeof discountApproval.$inferSelect;

/** Where an option is: the enquiry, and its place in it. */
export interface OptionKey {
  readonly enquiryId: number;
  readonly slot: number;
}

/** Those that were not taken out, in their order. */
export function listOptions(db: DbOrTx, enquiryId: number): readonly OptionRow[] {
  return db
    .select()
    .from(quoteOption)
    .where(and(eq(quoteOption.enquiry_id, enquiryId), isNull(quoteOption.removed_at)))
    .orderBy(asc(quoteOption.slot))
    .all();
}

export function findOption(db: DbOrTx, { enquiryId, slot }: OptionKey): OptionRow | undefined {
  return db
    .select()
    .from(quoteOption)
    .where(and(eq(quoteOption.enquiry_id, enquiryId), eq(quoteOption.slot, slot)))
    .get();
}

/** The first slot that no option ever had. */
export function nextSlot(db: DbOrTx, enquiryId: number): number {
  const highest = db
    .select({ slot: max(quoteOption.slot) })
    .from(quoteOption)
    .where(eq(quoteOption.enquiry_id, enquiryId))
    .get();
  return (highest?.slot ?? 0) + 1;
}

interface OptionChange extends OptionKey {
  /** Version that it was changed on; 0 where there is no row yet. */
  readonly version: number;
  readonly choicesJson: string;
  readonly removedAt: string | null;
  readonly at: string;
}

/** Answers whether it was written: not where somebody else was first. */
export function writeOption(db: DbOrTx, change: OptionChange): boolean {
  const set = { choices_json: change.choicesJson, removed_at: change.removedAt, updated_at: change.at };
  if (change.version === 0) {
    const done = db
      .insert(quoteOption)
      .values({ enquiry_id: change.enquiryId, slot: change.slot, ...set })
      .onConflictDoNothing()
      .run();
    return done.changes === 1;
  }
  const done = db
    .update(quoteOption)
    .set({ ...set, version: sql`${quoteOption.version} + 1` })
    .where(
      and(
        eq(quoteOption.enquiry_id, change.enquiryId),
        eq(quoteOption.slot, change.slot),
        eq(quoteOption.version, change.version),
      ),
    )
    .run();
  return done.changes === 1;
}

/** The newest first. */
export function listApprovals(db: DbOrTx, { enquiryId, slot }: OptionKey): readonly ApprovalRow[] {
  return db
    .select()
    .from(discountApproval)
    .where(and(eq(discountApproval.enquiry_id, enquiryId), eq(discountApproval.option_slot, slot)))
    .orderBy(desc(discountApproval.id))
    .all();
}

export function findApproval(db: DbOrTx, id: number): ApprovalRow | undefined {
  return db.select().from(discountApproval).where(eq(discountApproval.id, id)).get();
}

type Asked = Pick<
  ApprovalRow,
  'enquiry_id' | 'option_slot' | 'asked_json' | 'state' | 'reason' | 'asked_by' | 'asked_by_name' | 'asked_at'
>;

export function insertApproval(db: DbOrTx, row: Asked): number {
  return Number(db.insert(discountApproval).values(row).returning({ id: discountApproval.id }).get().id);
}

type Decided = Pick<ApprovalRow, 'id' | 'state' | 'decided_by' | 'decided_by_name' | 'decided_at' | 'decision_reason'>;

export function decideApproval(db: DbOrTx, { id, ...set }: Decided): void {
  db.update(discountApproval).set(set).where(eq(discountApproval.id, id)).run();
}
