/*
 * Reads and writes keys of customers' programs, and answers kept so that a request is carried out once.
 * Invariant: a key is found by its hash only; an answer that is kept is never replaced.
 * Not here: what a key may do (lib/services/self-service/open-key.ts).
 * Read next: ../schema/api-key.ts, ../schema/kept-answer.ts.
 */
import { and, desc, eq, lt } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { apiKey } from '../schema/api-key.ts';
import { keptAnswer } from '../schema/kept-answer.ts';

export type ApiKeyRow = typeof apiKey.$inferSelect;
export type KeptAnswerRow = typeof keptAnswer.$inferSelect;

export function insertApiKey(db: DbOrTx, row: Omit<typeof apiKey.$inferInsert, 'id'>): number {
  return db.insert(apiKey).values(row).returning({ id: apiKey.id }).get().id;
}

export function findApiKey(db: DbOrTx, keyHash: string): ApiKeyRow | undefined {
  return db.select().from(apiKey).where(eq(apiKey.key_hash, keyHash)).get();
}

export function keysOfCustomer(db: DbOrTx, customerId: number): readonly ApiKeyRow[] {
  return db.select().from(apiKey).where(eq(apiKey.customer_id, customerId)).orderBy(desc(apiKey.id)).all();
}

export function changeApiKey(
  db: DbOrTx,
  { id, set }: { readonly id: number; readonly set: Partial<Pick<ApiKeyRow, 'revoked_at' | 'last_used_at'>> },
): number {
  return db.update(apiKey).set(set).where(eq(apiKey.id, id)).run().changes;
}

export function findKeptAnswer(
  db: DbOrTx,
  { scope, key }: { readonly scope: string; readonly key: string },
): KeptAnswerRow | undefined {
  return db
    .select()
    .from(keptAnswer)
    .where(and(eq(keptAnswer.scope, scope), eq(keptAnswer.key, key)))
    .get();
}

export function insertKeptAnswer(db: DbOrTx, row: Omit<typeof keptAnswer.$inferInsert, 'id'>): void {
  db.insert(keptAnswer).values(row).run();
}

export function forgetKeptAnswers(db: DbOrTx, before: string): void {
  db.delete(keptAnswer).where(lt(keptAnswer.at, before)).run();
}
