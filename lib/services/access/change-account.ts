/*
 * A person changes their own name and ends their own sessions.
 * Invariant: nobody's account but the one of who asks is touched.
 * Not here: the password (choose-password.ts), preferences (set-preferences.ts).
 * Read next: change-user.ts.
 */
import { changeUserRow, endSessions } from '#db/queries/users.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { isPersonName } from './person-name.ts';

export function renameSelf(context: Context, input: { readonly name: string }): Result<true> {
  const allowed = authorise(context, 'use an account');
  if (!allowed.ok) return allowed;
  const { actor, database } = context;
  const name = input.name.trim();
  if (!isPersonName(name)) return failed({ code: 'name-missing', sentence: 'Give a name of at most 120 characters.' });
  database.db.transaction((tx) => {
    changeUserRow(tx, actor.id, { name, updated_at: context.now() });
    logChange(tx, {
      context,
      deed: { action: 'changed name', subject: `user ${actor.id}`, detail: { from: actor.name, to: name } },
    });
  });
  return ok(true);
}

/** Ends one of one's own sessions, or all but the one that asks. Answers how many ended. */
export function endOwnSessions(
  context: Context,
  which: { readonly only: string } | { readonly except: string },
): Result<number> {
  const allowed = authorise(context, 'use an account');
  if (!allowed.ok) return allowed;
  const { actor, database } = context;
  return database.db.transaction((tx) => {
    const ended = endSessions(tx, { userId: actor.id, ...which });
    logChange(tx, { context, deed: { action: 'ended own sessions', subject: `user ${actor.id}`, detail: { ended } } });
    return ok(ended);
  });
}
