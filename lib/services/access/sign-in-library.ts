/*
 * The sign-in library over our own tables: it hashes passwords (scrypt), makes sessions and signs their cookie.
 * Invariant: it is only called from here and never served to the network itself; it reports nothing to anyone.
 * Not here: throttling, roles and the log (sign-in.ts); who asks (who-asks.ts).
 * Read next: sign-in.ts.
 */
import { randomBytes } from 'node:crypto';
import { drizzleAdapter } from 'better-auth/adapters/drizzle';
import { betterAuth } from 'better-auth/minimal';
import type { OpenDatabase } from '#db/client.ts';
import { secretNamed } from '#db/queries/sign-in-tries.ts';
import { SIGN_IN_TABLES } from '#db/queries/users.ts';

/** A session ends this long after signing in, however much it is used. */
export const SESSION_DAYS = 7;
export const PASSWORD_CHARACTERS = { least: 12, most: 128 } as const;

type Library = ReturnType<typeof makeLibrary>;
const libraries = new WeakMap<OpenDatabase, Library>();

/** One library a database; its secret is made at the first call and stays in the database. */
export function signInLibrary(database: OpenDatabase): Library {
  const made = libraries.get(database) ?? makeLibrary(database);
  libraries.set(database, made);
  return made;
}

const TIMES = { createdAt: 'created_at', updatedAt: 'updated_at' } as const;
const ACCOUNT_FIELDS = {
  accountId: 'account_id',
  providerId: 'provider_id',
  userId: 'user_id',
  accessToken: 'access_token',
  accessTokenExpiresAt: 'access_token_expires_at',
  refreshToken: 'refresh_token',
  refreshTokenExpiresAt: 'refresh_token_expires_at',
  idToken: 'id_token',
  ...TIMES,
} as const;

function makeLibrary(database: OpenDatabase) {
  const fresh = randomBytes(48).toString('base64url');
  return betterAuth({
    database: drizzleAdapter(database.db, { provider: 'sqlite', schema: SIGN_IN_TABLES }),
    secret: secretNamed(database.db, { name: 'cookies', fresh, at: new Date().toISOString() }),
    // Only for addresses in mails, which the house does not send; it never decides which origin may ask.
    baseURL: 'http://localhost',
    telemetry: { enabled: false },
    logger: { disabled: true },
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: 1,
      maxPasswordLength: PASSWORD_CHARACTERS.most,
    },
    user: {
      fields: { emailVerified: 'email_verified', ...TIMES },
      additionalFields: { role: { type: 'string', required: true, input: false } },
    },
    account: { fields: ACCOUNT_FIELDS },
    verification: { fields: { expiresAt: 'expires_at', ...TIMES } },
    session: {
      fields: {
        userId: 'user_id',
        expiresAt: 'expires_at',
        ipAddress: 'ip_address',
        userAgent: 'user_agent',
        ...TIMES,
      },
      expiresIn: SESSION_DAYS * 86_400,
      disableSessionRefresh: true,
    },
    advanced: {
      cookiePrefix: 'kitwright',
      useSecureCookies: false,
      ipAddress: { ipAddressHeaders: ['x-forwarded-for'] },
      defaultCookieAttributes: { httpOnly: true, sameSite: 'lax', path: '/' },
    },
  });
}
