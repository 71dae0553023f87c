/*
 * The Desk's word on one charge: approved as worked out, changed or struck with the reason; a word can be taken back until the note.
 * Invariant: a word is about the amount that its writer saw; where it is another by now nothing is written.
 * Not here: what a word does to a line (lib/pricing/return-decisions.ts).
 * Read next: issue-return-note.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { putDecision, removeDecision } from '#db/queries/return-notes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Decision, decide } from '#lib/pricing/return-decisions.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { bookingNumbered } from '../booking-record.ts';
import { chargesOf } from './charges-of.ts';
import { whoIs } from './open-return.ts';
import { mayBeSettled } from './return-record.ts';

export interface ChargeWord {
  readonly number: string;
  readonly key: string;
  /** The amount that was seen. */
  readonly proposedMinor: number;
  /** Null takes an earlier word back. */
  readonly decision: Decision | null;
}

export function decideCharge(context: Context, word: ChargeWord): Result<{ readonly decision: string }> {
  const allowed = authorise(context, 'decide charges');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => write(tx, { context, word }), { behavior: 'immediate' });
}

interface Writing {
  readonly context: Context;
  readonly word: ChargeWord;
}

function write(tx: DbOrTx, { context, word }: Writing): Result<{ readonly decision: string }> {
  const booking = bookingNumbered(tx, word.number);
  if (!booking.ok) return booking;
  const open = mayBeSettled(tx, booking.value);
  if (!open.ok) return open;
  const charges = chargesOf(tx, { context, booking: booking.value });
  if (!charges.ok) return charges;
  const charge = charges.value.charges.find(({ key }) => key === word.key);
  if (!charge)
    return failed({ code: 'no-such-charge', sentence: 'That is not charged here any more; load the page again.' });
  if (charge.line.net_minor !== word.proposedMinor)
    return failed({
      code: 'changed-meanwhile',
      sentence: 'Something was checked in or repaired meanwhile, and the amount is another by now: look at it again.',
    });
  const subject = `booking ${booking.value.number}`;
  if (word.decision === null) {
    removeDecision(tx, { bookingId: booking.value.id, charge: word.key });
    logChange(tx, { context, deed: { action: 'word on a charge taken back', subject, detail: { charge: word.key } } });
    return ok({ decision: 'open' });
  }
  const { currency } = charges.value.terms.papers.house.pricing;
  const decided = decide({ line: charge.line, decision: word.decision, currency });
  if (!decided.ok) return decided;
  putDecision(tx, {
    booking_id: booking.value.id,
    charge: word.key,
    decision: word.decision.kind,
    proposed_minor: charge.line.net_minor,
    net_minor: decided.value.net_minor,
    reason: word.decision.kind === 'approved' ? '' : word.decision.reason.trim(),
    at: timestamp(context),
    ...whoIs(context),
  });
  const detail = { charge: word.key, ...word.decision, proposed_minor: charge.line.net_minor };
  logChange(tx, { context, deed: { action: 'charge decided', subject, detail } });
  return ok({ decision: word.decision.kind });
}
