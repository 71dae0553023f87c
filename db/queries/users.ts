/*
 * Reads and writes the people who may sign in, their password hash and their signed-in browsers.
 * Invariant: an email is compared in lower case.
 * Not here: who may change whom (lib/services), the throttle (sign-in-tries.ts).
 * Read next: ../schema/user.ts.
 */
import { and, asc, count, desc, eq, gt, isNull, ne } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { account } from '../schema/account.ts';
import { session } from '../schema/session.ts';
import { user } from '../schema/user.ts';
import { verification } from '../schema/verification.ts';

export type UserRow = typeof user.$inferSelect;
export type SessionRow = typeof session.$inferSelect;

/** What the sign-in library keeps, under the names by which it asks. */
export const SIGN_IN_TABLES = { user, account, session, verification } as const;

/** The one kind of account that the house knows, by the library's name for it. */
const CREDENTIAL = 'credential';

export function listUsers(db: DbOrTx): readonly UserRow[] {
  return db.select().from(user).orderBy(asc(user.name), asc(user.email)).all();
}

export function findUser(db: DbOrTx, id: string): UserRow | undefined {
  return db.select().from(user).where(eq(user.id, id)).get();
}

export function findUserByEmail(db: DbOrTx, email: string): UserRow | undefined {
  return db.select().from(user).where(eq(user.email, email.toLowerCase())).get();
}

export function insertUser(db: DbOrTx, row: UserRow & { readonly passwordHash: string }): void {
  const { passwordHash, ...person } = row;
  db.insert(user)
    .values({ ...person, email: person.email.toLowerCase() })
    .run();
  db.insert(account)
    .values({
      id: `${person.id}-password`,
      account_id: person.id,
      provider_id: CREDENTIAL,
      user_id: person.id,
      password: passwordHash,
      created_at: person.created_at,
      updated_at: person.created_at,
    })
    .run();
}

export type UserChange = Partial<Omit<UserRow, 'id' | 'email' | 'created_at'>> & Pick<UserRow, 'updated_at'>;

export function changeUserRow(db: DbOrTx, id: string, change: UserChange): void {
  db.update(user).set(change).where(eq(user.id, id)).run();
}

export function passwordHashOf(db: DbOrTx, userId: string): string | undefined {
  const row = db.select({ password: account.password }).from(account).where(ofUser(userId)).get();
  return row?.password ?? undefined;
}

export function writePasswordHash(
  db: DbOrTx,
  { userId, hash, at }: { readonly userId: string; readonly hash: string; readonly at: Date },
): void {
  db.update(account).set({ password: hash, updated_at: at }).where(ofUser(userId)).run();
}

/** Administrators who can still sign in, without the one named. */
export function otherAdministrators(db: DbOrTx, userId: string): number {
  const row = db
    .select({ count: count() })
    .from(user)
    .where(and(eq(user.role, 'administrator'), isNull(user.disabled_at), ne(user.id, userId)))
    .get();
  return row?.count ?? 0;
}

export function sessionsOf(
  db: DbOrTx,
  { userId, now }: { readonly userId: string; readonly now: Date },
): readonly SessionRow[] {
  return db
    .select()
    .from(session)
    .where(and(eq(session.user_id, userId), gt(session.expires_at, now)))
    .orderBy(desc(session.created_at))
    .all();
}

/** Ends the sessions of a user: all of them, one, or all but one. Answers how many ended. */
export function endSessions(
  db: DbOrTx,
  { userId, only, except }: { readonly userId: string; readonly only?: string; readonly except?: string },
): number {
  const which = [
    eq(session.user_id, userId),
    ...(only === undefined ? [] : [eq(session.id, only)]),
    ...(except === undefined ? [] : [ne(session.id, except)]),
  ];
  return db
    .delete(session)
    .where(and(...which))
    .run().changes;
}

function ofUser(userId: string) {
  return and(eq(account.user_id, userId), eq(account.provider_id, CREDENTIAL));
}
