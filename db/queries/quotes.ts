/*
 * Reads and writes plans, issued quotes and the bytes of their papers.
 * Invariant: nothing here changes an issued quote but its state.
 * Not here: drawing papers (lib/workers).
 * Read next: ../schema/quote.ts.
 */
import { and, desc, eq, sql } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { paper } from '../schema/paper.ts';
import { plan } from '../schema/plan.ts';
import { quote } from '../schema/quote.ts';
import type { OptionKey } from './quote-options.ts';

export type PlanRow = typeof plan.$inferSelect;
export type QuoteRow = typeof quote.$inferSelect;
export type PaperRow = typeof paper.$inferSelect;

/** Plans before this many newest ones of an option are dropped; issued quotes hold their own copy. */
const PLANS_KEPT = 5;

export function latestPlan(db: DbOrTx, { enquiryId, slot }: OptionKey): PlanRow | undefined {
  return db.select().from(plan).where(ofOption(enquiryId, slot)).orderBy(desc(plan.id)).limit(1).get();
}

export interface PlanFigures {
  readonly preference: string;
  readonly served: number;
  readonly cost_minor: number;
  readonly time_s: number;
  readonly mass_kg: number;
  readonly pieces: number;
}

/** Figures of the plan before the newest, one row a preference, without reading the rest of it; none where there is no earlier one. */
export function planFiguresBefore(db: DbOrTx, { enquiryId, slot }: OptionKey): readonly PlanFigures[] {
  const before = db
    .select({ id: plan.id })
    .from(plan)
    .where(ofOption(enquiryId, slot))
    .orderBy(desc(plan.id))
    .offset(1)
    .limit(1)
    .get();
  if (before === undefined) return [];
  const ofKits = (figure: string) =>
    sql`(SELECT coalesce(sum(json_extract(k.value, ${`$.${figure}`})), 0) FROM json_each(p.value, '$.kits') AS k)`;
  return db.all<PlanFigures>(sql`
    SELECT json_extract(p.value, '$.preference') AS preference, json_extract(p.value, '$.fleet.served') AS served,
      json_extract(p.value, '$.fleet.cost_minor') AS cost_minor,
      ${ofKits('time_s')} AS time_s, ${ofKits('mass_kg')} AS mass_kg, ${ofKits('pieces')} AS pieces
    FROM ${plan}, json_each(${plan.result_json}, '$.plans') AS p WHERE ${plan.id} = ${before.id}`);
}

function ofOption(enquiryId: number, slot: number) {
  return and(eq(plan.enquiry_id, enquiryId), eq(plan.option_slot, slot));
}

export function insertPlan(db: DbOrTx, row: Omit<PlanRow, 'id'>): number {
  const { id } = db.insert(plan).values(row).returning({ id: plan.id }).get();
  const old = db
    .select({ id: plan.id })
    .from(plan)
    .where(ofOption(row.enquiry_id, row.option_slot))
    .orderBy(desc(plan.id))
    .offset(PLANS_KEPT)
    .limit(1000)
    .all();
  for (const gone of old) db.delete(plan).where(eq(plan.id, gone.id)).run();
  return Number(id);
}

export interface QuoteSummary extends Omit<QuoteRow, 'frozen_json'> {
  /** The dates that were quoted, whatever the enquiry says since. */
  readonly starts_on: string;
  readonly days: number;
  /** `[first, others]` with option and price of each; nulls where it offers one. */
  readonly options_json: string;
  readonly order_number: string | null;
  readonly program: string | null;
}

const SUMMARY = {
  id: quote.id,
  enquiry_id: quote.enquiry_id,
  number: quote.number,
  revision: quote.revision,
  state: quote.state,
  state_reason: quote.state_reason,
  state_by: quote.state_by,
  state_at: quote.state_at,
  issued_on: quote.issued_on,
  valid_until: quote.valid_until,
  total_minor: quote.total_minor,
  currency: quote.currency,
  starts_on: sql<string>`json_extract(${quote.frozen_json}, '$.site.startsOn')`,
  days: sql<number>`json_extract(${quote.frozen_json}, '$.site.days')`,
  options_json: sql<string>`json_array(
    CASE WHEN json_type(${quote.frozen_json}, '$.option') IS NULL THEN NULL ELSE json_object(
      'option', json_extract(${quote.frozen_json}, '$.option'),
      'price', json_object('gross_minor', json_extract(${quote.frozen_json}, '$.price.gross_minor'))) END,
    json((SELECT json_group_array(json_object(
      'option', json_extract(value, '$.option'),
      'price', json_object('gross_minor', json_extract(value, '$.price.gross_minor'))))
     FROM json_each(${quote.frozen_json}, '$.others'))))`,
  order_number: sql<string | null>`json_extract(${quote.frozen_json}, '$.payment.orderNumber')`,
  program: sql<string | null>`json_extract(${quote.frozen_json}, '$.made.program')`,
};

export function listQuotes(db: DbOrTx, enquiryId: number): readonly QuoteSummary[] {
  return db.select(SUMMARY).from(quote).where(eq(quote.enquiry_id, enquiryId)).orderBy(desc(quote.id)).all();
}

export function findQuote(db: DbOrTx, id: number): QuoteRow | undefined {
  return db.select().from(quote).where(eq(quote.id, id)).get();
}

export function insertQuote(db: DbOrTx, row: Omit<QuoteRow, 'id' | 'state_reason' | 'state_by' | 'state_at'>): number {
  return Number(db.insert(quote).values(row).returning({ id: quote.id }).get().id);
}

export interface QuoteStateChange {
  readonly id: number;
  readonly state: string;
  readonly reason: string;
  readonly by: string;
  readonly at: string;
}

export function changeQuoteState(db: DbOrTx, { id, state, reason, by, at }: QuoteStateChange): void {
  db.update(quote).set({ state, state_reason: reason, state_by: by, state_at: at }).where(eq(quote.id, id)).run();
}

export function insertPaper(db: DbOrTx, row: Omit<PaperRow, 'id'>): void {
  db.insert(paper).values(row).run();
}

/** Keeps a paper unless one of its kind is there: of two that draw it at once the first is kept. */
export function keepPaper(db: DbOrTx, row: Omit<PaperRow, 'id'>): void {
  db.insert(paper)
    .values(row)
    .onConflictDoNothing({ target: [paper.quote_id, paper.kind] })
    .run();
}

export function findPaper(db: DbOrTx, key: { readonly quoteId: number; readonly kind: string }): PaperRow | undefined {
  return db
    .select()
    .from(paper)
    .where(and(eq(paper.quote_id, key.quoteId), eq(paper.kind, key.kind)))
    .get();
}

/** Everything kept with a quote, without the bytes. */
export function listPapers(db: DbOrTx, quoteId: number): readonly Pick<PaperRow, 'kind' | 'sha256'>[] {
  return db
    .select({ kind: paper.kind, sha256: paper.sha256 })
    .from(paper)
    .where(eq(paper.quote_id, quoteId))
    .orderBy(paper.id)
    .all();
}
