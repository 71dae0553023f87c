/*
 * Tells a person who fills in the first form from a machine that fires at it, without asking anybody else.
 * Invariant: works without scripts; with one a small proof of work buys more turns, never a right.
 * Not here: how many turns there are (self-throttle.ts).
 * Read next: start-order.ts.
 */
import { createHash, createHmac, timingSafeEqual } from 'node:crypto';
import { secretNamed } from '#db/queries/sign-in-tries.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, milliseconds, timestamp } from '#lib/services/context.ts';
import { newSecret } from './secret.ts';
import { takeTurn } from './self-throttle.ts';

/** Nobody reads and answers five questions faster. House practice, no source. */
const LEAST_MS = 2_000;
/** A page may stay open for a working day. */
const MOST_MS = 12 * 60 * 60_000;
/** Leading zero bits of the proof: some thousands of hashes, a blink on a slow telephone. */
const PROOF_BITS = 12;

export interface FormSent {
  readonly ticket: string;
  /** A field that people do not see; whoever fills it is none. */
  readonly trap: string;
  /** A number found by a script, or empty where none ran. */
  readonly proof: string;
  readonly address: string;
}

/** A ticket for the form: when it was shown, under the house's own seal. */
export function formTicket(context: Context): string {
  const at = String(milliseconds(context));
  return `${at}.${sealOf(context, at)}`;
}

/** Refuses what no person sent; without a proof there are fewer turns for an address. */
export function checkForm(context: Context, { ticket, trap, proof, address }: FormSent): Result<true> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const [at = '', seal = ''] = ticket.split('.');
  const age = milliseconds(context) - Number(at);
  const isOurs = /^\d{10,16}$/.test(at) && sameText(seal, sealOf(context, at));
  if (!isOurs || trap !== '' || age > MOST_MS)
    return failed({
      code: 'form-unreadable',
      sentence: 'The form is out of date. Load the page again and send it once more.',
    });
  if (age < LEAST_MS)
    return failed({
      code: 'too-quick',
      sentence: 'That went too quickly for a person. Wait a few seconds and send it again.',
    });
  return hasProof(ticket, proof) ? ok(true) : takeTurn(context, { turn: 'start without a proof', who: address });
}

function sealOf(context: Context, at: string): string {
  const { secret } = newSecret();
  const key = secretNamed(context.database.db, { name: 'form seal', fresh: secret, at: timestamp(context) });
  return createHmac('sha256', key).update(at).digest('base64url');
}

function sameText(one: string, other: string): boolean {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
}

function hasProof(ticket: string, proof: string): boolean {
  if (!/^\d{1,12}$/.test(proof)) return false;
  const hash = createHash('sha256').update(`${ticket}.${proof}`).digest();
  return hash.readUInt16BE(0) >> (16 - PROOF_BITS) === 0;
}
