/*
 * Hash of bytes that are kept: lists as received, papers as issued, inputs of a plan.
 * Invariant: hexadecimal SHA-256 (FIPS 180-4), lower case.
 * Not here: passwords.
 * Read next: receive-list.ts, issue-quote.ts.
 */
import { createHash } from 'node:crypto';

export function sha256(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex');
}
