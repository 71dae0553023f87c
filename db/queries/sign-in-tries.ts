/*
 * Counts tries to sign in, and keeps the secrets that the house makes for itself.
 * Invariant: a secret that is there is never replaced.
 * Not here: how many tries are too many (lib/services/access/throttle.ts).
 * Read next: ../schema/sign-in-try.ts.
 */
import { and, asc, eq, gt, lte } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { houseSecret } from '../schema/house-secret.ts';
import { signInTry } from '../schema/sign-in-try.ts';

/** Moments of the tries under a key since a moment, oldest first. */
export function triesSince(
  db: DbOrTx,
  { key, since }: { readonly key: string; readonly since: string },
): readonly string[] {
  return db
    .select({ at: signInTry.at })
    .from(signInTry)
    .where(and(eq(signInTry.key, key), gt(signInTry.at, since)))
    .orderBy(asc(signInTry.at))
    .all()
    .map(({ at }) => at);
}

export function addTry(db: DbOrTx, row: { readonly key: string; readonly at: string }): void {
  db.insert(signInTry).values(row).run();
}

export function forgetTries(db: DbOrTx, key: string): void {
  db.delete(signInTry).where(eq(signInTry.key, key)).run();
}

/** Takes back one try, the one that succeeded. */
export function forgetTry(db: DbOrTx, { key, at }: { readonly key: string; readonly at: string }): void {
  db.delete(signInTry)
    .where(and(eq(signInTry.key, key), eq(signInTry.at, at)))
    .run();
}

export function forgetTriesUntil(db: DbOrTx, until: string): void {
  db.delete(signInTry).where(lte(signInTry.at, until)).run();
}

export function secretNamed(
  db: DbOrTx,
  { name, fresh, at }: { readonly name: string; readonly fresh: string; readonly at: string },
): string {
  db.insert(houseSecret).values({ name, value: fresh, created_at: at }).onConflictDoNothing().run();
  return db.select().from(houseSecret).where(eq(houseSecret.name, name)).get()?.value ?? fresh;
}
