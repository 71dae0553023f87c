/*
 * An administrator lets a person in: name, email, role, and a one-time password that is answered once.
 * Invariant: an email belongs to one user; the password must be replaced at the first sign-in.
 * Not here: changing a user (change-user.ts).
 * Read next: passwords.ts.
 */
import { randomUUID } from 'node:crypto';
import { addAuditEntry } from '#db/queries/audit.ts';
import { findUserByEmail, insertUser } from '#db/queries/users.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, type UserRole } from '#lib/services/context.ts';
import { hashed, oneTimePassword } from './passwords.ts';
import { isPersonName } from './person-name.ts';
import { HOUSE_PREFERENCES } from './preferences.ts';

interface NewUser {
  readonly name: string;
  readonly email: string;
  readonly role: UserRole;
}

export interface AddedUser {
  readonly id: string;
  readonly email: string;
  readonly password: string;
}

/** One @, something on both sides, no blank: whether a mail arrives there is for the person who typed it to know. */
const EMAIL = /^[^\s@]{1,64}@[^\s@]{1,255}$/;

export async function addUser(context: Context, input: NewUser): Promise<Result<AddedUser>> {
  const allowed = authorise(context, 'manage users');
  if (!allowed.ok) return allowed;
  const name = input.name.trim();
  const email = input.email.trim().toLowerCase();
  if (!isPersonName(name))
    return failed({ code: 'name-missing', sentence: 'Give the person’s name, at most 120 characters.' });
  if (!EMAIL.test(email))
    return failed({
      code: 'email-unreadable',
      sentence: `“${email}” is not an email address; it looks like name@place.example.`,
    });
  const password = oneTimePassword();
  const passwordHash = await hashed(password);
  const id = randomUUID();
  return context.database.db.transaction(
    (tx): Result<AddedUser> => {
      if (findUserByEmail(tx, email) !== undefined)
        return failed({
          code: 'email-taken',
          sentence: `${email} is a user already; give them a new password instead.`,
        });
      const at = context.now();
      insertUser(tx, {
        id,
        name,
        email,
        email_verified: false,
        image: null,
        role: input.role,
        disabled_at: null,
        is_one_time: true,
        ...HOUSE_PREFERENCES,
        currency: null,
        created_at: at,
        updated_at: at,
        passwordHash,
      });
      addAuditEntry(tx, {
        at: timestamp(context),
        who: context.actor,
        action: 'added user',
        subject: `user ${id}`,
        detail_json: JSON.stringify({ name, email, role: input.role }),
      });
      return ok({ id, email, password });
    },
    { behavior: 'immediate' },
  );
}
