/*
 * Signs a person in: throttled, logged, refused with one sentence whatever was wrong.
 * Invariant: an unknown email, a wrong password and a disabled user get the same answer in the same time.
 * Not here: the cookie on the answer (app), who asks afterwards (who-asks.ts).
 * Read next: throttle.ts, sign-in-library.ts.
 */
import { addAuditEntry } from '#db/queries/audit.ts';
import { endSessions, findUserByEmail, type UserRow } from '#db/queries/users.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Actor, type Context, NOBODY, timestamp } from '#lib/services/context.ts';
import { signInLibrary } from './sign-in-library.ts';
import { succeeded, takeTry } from './throttle.ts';

interface SignIn {
  readonly email: string;
  readonly password: string;
  /** Where the request came from, for the throttle and the list of sessions. */
  readonly address: string;
  readonly browser: string;
}

export interface SessionCookie {
  readonly name: string;
  readonly value: string;
  readonly maxAge_s: number;
}

const REFUSED = failed({
  code: 'sign-in-refused',
  sentence: 'This email and password do not go together. Check both; an administrator can give you a new password.',
});

export async function signIn(context: Context, asked: SignIn): Promise<Result<SessionCookie>> {
  const allowed = authorise(context, 'sign in');
  if (!allowed.ok) return allowed;
  const email = asked.email.trim().toLowerCase().slice(0, 320);
  const user = findUserByEmail(context.database.db, email);
  const counted = takeTry(context, { account: email, address: asked.address });
  if (!counted.ok) {
    log(context, { user, action: 'sign-in held back', email, address: asked.address });
    return counted;
  }
  const cookie = await sessionCookie(context, { ...asked, email });
  if (cookie === undefined || user === undefined || user.disabled_at !== null) {
    if (cookie !== undefined && user !== undefined) endSessions(context.database.db, { userId: user.id });
    log(context, { user, action: 'sign-in refused', email, address: asked.address });
    return REFUSED;
  }
  succeeded(context, { account: email, address: asked.address, at: counted.value });
  log(context, { user, action: 'signed in', email, address: asked.address });
  return ok(cookie);
}

async function sessionCookie(context: Context, asked: SignIn): Promise<SessionCookie | undefined> {
  const headers = new Headers({ 'x-forwarded-for': asked.address, 'user-agent': asked.browser.slice(0, 300) });
  const body = { email: asked.email, password: asked.password };
  const answer = await signInLibrary(context.database).api.signInEmail({ body, headers, asResponse: true });
  if (!answer.ok) return undefined;
  return readCookie(answer.headers.getSetCookie());
}

function readCookie(lines: readonly string[]): SessionCookie | undefined {
  for (const line of lines) {
    const [, name, value] = /^([^=;]*session_token)=([^;]+)/.exec(line) ?? [];
    const seconds = Number(/max-age=(\d+)/i.exec(line)?.[1] ?? 0);
    if (name !== undefined && value !== undefined) return { name, value: decodeURIComponent(value), maxAge_s: seconds };
  }
  return undefined;
}

interface Event {
  readonly user: UserRow | undefined;
  readonly action: string;
  readonly email: string;
  readonly address: string;
}

/** A refused try names the account it was for, not the person who tried: that is not known. */
function log(context: Context, { user, action, email, address }: Event): void {
  const who: Actor = user && action === 'signed in' ? { ...user, role: user.role } : NOBODY;
  addAuditEntry(context.database.db, {
    at: timestamp(context),
    who,
    action,
    subject: user ? `user ${user.id}` : 'sign-in',
    detail_json: JSON.stringify({ email, address }),
  });
}
