/*
 * A person replaces their own password.
 * Invariant: the present one is asked for, the new one differs from it, and every other session of theirs ends.
 * Not here: a new one-time password by an administrator (change-user.ts).
 * Read next: passwords.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { changeUserRow, endSessions, findUser, passwordHashOf, writePasswordHash } from '#db/queries/users.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { checkPassword, hashed, isPassword } from './passwords.ts';
import { succeeded, takeTry } from './throttle.ts';

interface PasswordChoice {
  readonly present: string;
  readonly next: string;
  /** The session that asks; it stays. */
  readonly sessionId: string;
}

export async function choosePassword(context: Context, choice: PasswordChoice): Promise<Result<true>> {
  const allowed = authorise(context, 'choose a password');
  if (!allowed.ok) return allowed;
  const { actor, database } = context;
  const user = findUser(database.db, actor.id);
  const hash = passwordHashOf(database.db, actor.id);
  if (user === undefined || hash === undefined)
    return failed({ code: 'no-such-user', sentence: 'There is no such user any more; sign in again.' });
  const asked = { account: user.email, address: `session ${choice.sessionId}` };
  const counted = takeTry(context, asked);
  if (!counted.ok) return counted;
  if (!(await isPassword({ password: choice.present, hash })))
    return failed({ code: 'password-wrong', sentence: 'The present password is not right. Nothing was changed.' });
  succeeded(context, { ...asked, at: counted.value });
  if (choice.next === choice.present)
    return failed({ code: 'password-the-same', sentence: 'The new password must differ from the present one.' });
  const good = checkPassword({ password: choice.next, email: user.email });
  if (!good.ok) return good;
  const newHash = await hashed(choice.next);
  database.db.transaction((tx) => {
    const at = context.now();
    writePasswordHash(tx, { userId: actor.id, hash: newHash, at });
    changeUserRow(tx, actor.id, { is_one_time: false, updated_at: at });
    endSessions(tx, { userId: actor.id, except: choice.sessionId });
    addAuditEntry(tx, {
      at: timestamp(context),
      who: actor,
      action: 'chose a password',
      subject: `user ${actor.id}`,
      detail_json: '{}',
    });
  });
  return ok(true);
}
