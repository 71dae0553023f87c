/*
 * Ends the session that asks.
 * Invariant: the session is gone from the database, so its cookie is worth nothing afterwards.
 * Not here: the cookie itself (app).
 * Read next: sign-in.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { endSessions } from '#db/queries/users.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';

export function signOut(context: Context, input: { readonly sessionId: string }): Result<true> {
  const allowed = authorise(context, 'choose a password');
  if (!allowed.ok) return allowed;
  const { actor, database } = context;
  database.db.transaction((tx) => {
    endSessions(tx, { userId: actor.id, only: input.sessionId });
    addAuditEntry(tx, {
      at: timestamp(context),
      who: actor,
      action: 'signed out',
      subject: `user ${actor.id}`,
      detail_json: '{}',
    });
  });
  return ok(true);
}
