/*
 * The people of the house, as an administrator sees them; one of them with the browsers that are signed in.
 * Invariant: no hash and no session token leaves here.
 * Not here: changing them (change-user.ts).
 * Read next: change-user.ts.
 */
import { findUser, listUsers, type SessionRow, sessionsOf, type UserRow } from '#db/queries/users.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context, UserRole } from '#lib/services/context.ts';

export interface UserView {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: UserRole;
  readonly standing: 'active' | 'one-time password' | 'disabled';
  readonly sessions: number;
  readonly lastSignIn: string | undefined;
}

export interface SessionView {
  readonly id: string;
  readonly since: string;
  readonly until: string;
  readonly address: string;
  readonly browser: string;
}

export function listHouseUsers(context: Context): Result<readonly UserView[]> {
  const allowed = authorise(context, 'manage users');
  if (!allowed.ok) return allowed;
  return ok(listUsers(context.database.db).map((row) => userView(context, row)));
}

export interface OpenedUser {
  readonly user: UserView;
  readonly sessions: readonly SessionView[];
}

export function openUser(context: Context, id: string): Result<OpenedUser> {
  const allowed = authorise(context, 'manage users');
  if (!allowed.ok) return allowed;
  const row = findUser(context.database.db, id);
  if (row === undefined) return failed({ code: 'no-such-user', sentence: 'There is no such user.' });
  return ok({ user: userView(context, row), sessions: sessionViews(context, id) });
}

/** One's own sessions, for anybody who is signed in. */
export function listOwnSessions(context: Context): Result<readonly SessionView[]> {
  const allowed = authorise(context, 'use an account');
  if (!allowed.ok) return allowed;
  return ok(sessionViews(context, context.actor.id));
}

function userView(context: Context, row: UserRow): UserView {
  const sessions = sessionViews(context, row.id);
  return {
    id: row.id,
    name: row.name,
    email: row.email,
    role: row.role,
    standing: row.disabled_at === null ? (row.is_one_time ? 'one-time password' : 'active') : 'disabled',
    sessions: sessions.length,
    lastSignIn: sessions[0]?.since,
  };
}

function sessionViews(context: Context, userId: string): readonly SessionView[] {
  return sessionsOf(context.database.db, { userId, now: context.now() }).map(sessionView);
}

function sessionView(row: SessionRow): SessionView {
  return {
    id: row.id,
    since: row.created_at.toISOString(),
    until: row.expires_at.toISOString(),
    address: row.ip_address ?? '',
    browser: row.user_agent ?? '',
  };
}
