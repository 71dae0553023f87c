/*
 * What a password must be, how one is hashed, and one-time passwords made by the house.
 * Invariant: a one-time password has 80 random bits and no letter that is mistaken for another.
 * Not here: who may set whose password (choose-password.ts, change-user.ts).
 * Read next: sign-in-library.ts.
 */
import { randomInt } from 'node:crypto';
import { hashPassword, verifyPassword } from 'better-auth/crypto';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { PASSWORD_CHARACTERS } from './sign-in-library.ts';

const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789A';
const GROUPS = 4;
const GROUP_LETTERS = 4;

export function oneTimePassword(): string {
  const group = () => Array.from({ length: GROUP_LETTERS }, () => LETTERS[randomInt(LETTERS.length)]).join('');
  return Array.from({ length: GROUPS }, group).join('-');
}

/** Length counts, and it must not be what anybody would try first (NIST SP 800-63B, 5.1.1.2: no rules of composition). */
export function checkPassword({
  password,
  email,
}: {
  readonly password: string;
  readonly email: string;
}): Result<string> {
  const { least, most } = PASSWORD_CHARACTERS;
  if (password.length < least) {
    return failed({
      code: 'password-too-short',
      sentence: `A password has at least ${least} characters; a few words in a row are easy to remember.`,
    });
  }
  if (password.length > most)
    return failed({ code: 'password-too-long', sentence: `A password has at most ${most} characters.` });
  const plain = password.toLowerCase();
  const own = email.toLowerCase();
  if (plain.includes(own) || plain === own.split('@')[0] || new Set(plain).size < 5) {
    return failed({
      code: 'password-too-easy',
      sentence:
        'That password is the first that anybody would try: it is your email or hardly more than one character. Take a few words in a row.',
    });
  }
  return ok(password);
}

export async function hashed(password: string): Promise<string> {
  return hashPassword(password);
}

export async function isPassword({
  password,
  hash,
}: {
  readonly password: string;
  readonly hash: string;
}): Promise<boolean> {
  return verifyPassword({ password, hash });
}
