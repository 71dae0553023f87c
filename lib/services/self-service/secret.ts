/*
 * Secrets of links and keys: 256 random bits, of which only a hash is kept.
 * Invariant: a secret is handed out once, by whoever made it, and cannot be read again.
 * Not here: what a secret opens (open-link.ts, open-key.ts).
 * Read next: open-link.ts.
 */
import { randomBytes } from 'node:crypto';
import { sha256 } from '#lib/services/sha256.ts';

const SECRET_BYTES = 32;

export function newSecret(): { readonly secret: string; readonly hash: string } {
  const secret = randomBytes(SECRET_BYTES).toString('base64url');
  return { secret, hash: secretHash(secret) };
}

export function secretHash(secret: string): string {
  return sha256(new TextEncoder().encode(secret));
}

/** 32 bytes in base64url are 43 letters; anything else is not looked up at all. */
export function isSecret(text: string): boolean {
  return /^[A-Za-z0-9_-]{43}$/.test(text);
}
