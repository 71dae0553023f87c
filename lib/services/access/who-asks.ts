/*
 * Finds out who asks, from the cookie that came along.
 * Invariant: looked up in the database at every request, so that a session that was ended or a user that was disabled is out at once.
 * Not here: what they may do (authorise.ts).
 * Read next: sign-in.ts.
 */
import type { OpenDatabase } from '#db/client.ts';
import { findUser } from '#db/queries/users.ts';
import { type Actor, NOBODY } from '#lib/services/context.ts';
import { HOUSE_PREFERENCES, type Preferences, preferencesOf } from './preferences.ts';
import { signInLibrary } from './sign-in-library.ts';

export interface Asker {
  readonly actor: Actor;
  readonly email: string;
  readonly sessionId: string;
  readonly preferences: Preferences;
}

const STRANGER: Asker = { actor: NOBODY, email: '', sessionId: '', preferences: HOUSE_PREFERENCES };

export async function whoAsks(database: OpenDatabase, cookies: string): Promise<Asker> {
  if (!cookies.includes('session_token=')) return STRANGER;
  const found = await signInLibrary(database).api.getSession({ headers: new Headers({ cookie: cookies }) });
  const user = found === null ? undefined : findUser(database.db, found.user.id);
  if (found === null || user === undefined || user.disabled_at !== null) return STRANGER;
  return {
    actor: { id: user.id, name: user.name, role: user.is_one_time ? 'one-time' : user.role },
    email: user.email,
    sessionId: found.session.id,
    preferences: preferencesOf(user),
  };
}
