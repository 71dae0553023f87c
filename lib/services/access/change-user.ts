/*
 * An administrator changes a user: role, disabled or not, a new one-time password, their sessions.
 * Invariant: the house always keeps one administrator who can sign in; whoever loses a right loses their sessions too.
 * Not here: adding a user (add-user.ts), one's own password (choose-password.ts).
 * Read next: add-user.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import {
  changeUserRow,
  endSessions,
  findUser,
  otherAdministrators,
  type UserRow,
  writePasswordHash,
} from '#db/queries/users.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context, UserRole } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { hashed, oneTimePassword } from './passwords.ts';

export function changeRole(context: Context, { userId, role }: { readonly userId: string; readonly role: UserRole }) {
  return change(context, userId, (tx, user) => {
    if (user.role === role) return ok('unchanged');
    if (isLast(tx, user)) return LAST_ADMINISTRATOR;
    changeUserRow(tx, userId, { role, updated_at: context.now() });
    logChange(tx, {
      context,
      deed: {
        action: 'changed role',
        subject: `user ${userId}`,
        detail: { name: user.name, from: user.role, to: role },
      },
    });
    return ok('changed');
  });
}

export function disableUser(context: Context, userId: string) {
  return change(context, userId, (tx, user) => {
    if (user.disabled_at !== null) return ok('unchanged');
    if (isLast(tx, user)) return LAST_ADMINISTRATOR;
    changeUserRow(tx, userId, { disabled_at: context.now(), updated_at: context.now() });
    const ended = endSessions(tx, { userId });
    logChange(tx, {
      context,
      deed: { action: 'disabled user', subject: `user ${userId}`, detail: { name: user.name, ended } },
    });
    return ok('changed');
  });
}

export function enableUser(context: Context, userId: string) {
  return change(context, userId, (tx, user) => {
    if (user.disabled_at === null) return ok('unchanged');
    changeUserRow(tx, userId, { disabled_at: null, updated_at: context.now() });
    logChange(tx, {
      context,
      deed: { action: 'enabled user', subject: `user ${userId}`, detail: { name: user.name } },
    });
    return ok('changed');
  });
}

/** Answers the new one-time password, this once; every session of the user ends. */
export async function resetPassword(context: Context, userId: string): Promise<Result<string>> {
  const allowed = authorise(context, 'manage users');
  if (!allowed.ok) return allowed;
  const password = oneTimePassword();
  const hash = await hashed(password);
  const done = change(context, userId, (tx, user) => {
    writePasswordHash(tx, { userId, hash, at: context.now() });
    changeUserRow(tx, userId, { is_one_time: true, updated_at: context.now() });
    endSessions(tx, { userId });
    logChange(tx, {
      context,
      deed: { action: 'gave a one-time password', subject: `user ${userId}`, detail: { name: user.name } },
    });
    return ok('changed');
  });
  return done.ok ? ok(password) : done;
}

export function signOutEverywhere(context: Context, userId: string) {
  return change(context, userId, (tx, user) => {
    const ended = endSessions(tx, { userId });
    logChange(tx, {
      context,
      deed: { action: 'ended all sessions', subject: `user ${userId}`, detail: { name: user.name, ended } },
    });
    return ok('changed');
  });
}

type Changed = 'changed' | 'unchanged';

const LAST_ADMINISTRATOR = failed({
  code: 'last-administrator',
  sentence: 'This is the last administrator who can sign in. Make another user an administrator first.',
});

function change(
  context: Context,
  userId: string,
  decide: (tx: DbOrTx, user: UserRow) => Result<Changed>,
): Result<Changed> {
  const allowed = authorise(context, 'manage users');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx) => {
      const user = findUser(tx, userId);
      if (user === undefined) return failed({ code: 'no-such-user', sentence: 'There is no such user.' });
      return decide(tx, user);
    },
    { behavior: 'immediate' },
  );
}

function isLast(tx: DbOrTx, user: UserRow): boolean {
  return user.role === 'administrator' && user.disabled_at === null && otherAdministrators(tx, user.id) === 0;
}
