/*
 * Says how a piece came to be broken or lost, as far as the damage waiver asks: covered, or left out by one of its terms.
 * Invariant: what leaves it out is one of the terms of the quote, in its words; a piece on a note is settled.
 * Not here: what it comes to (lib/pricing/return-charges.ts).
 * Read next: charges-of.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import { changeCountCause, changePiece, ensureCount, returnsOfBooking } from '#db/queries/returns.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Cause } from '#lib/pricing/return-facts.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { bookingNumbered } from '../booking-record.ts';
import { chargesOf } from './charges-of.ts';
import { whoIs } from './open-return.ts';
import { mayBeSettled } from './return-record.ts';

export interface CauseSaid {
  readonly number: string;
  /** `piece 12` or `model X501`, as the charge is about. */
  readonly about: string;
  readonly cause: Cause;
}

export function sayCause(context: Context, said: CauseSaid): Result<{ readonly cause: Cause['kind'] }> {
  const allowed = authorise(context, 'decide charges');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => say(tx, { context, said }), { behavior: 'immediate' });
}

interface Saying {
  readonly context: Context;
  readonly said: CauseSaid;
}

function say(tx: DbOrTx, { context, said }: Saying): Result<{ readonly cause: Cause['kind'] }> {
  const booking = bookingNumbered(tx, said.number);
  if (!booking.ok) return booking;
  const open = mayBeSettled(tx, booking.value);
  if (!open.ok) return open;
  const charges = chargesOf(tx, { context, booking: booking.value });
  if (!charges.ok) return charges;
  const isAsked = charges.value.charges.some(
    ({ line }) => line.about === said.about && (line.kind === 'repair' || line.kind === 'loss'),
  );
  if (!isAsked)
    return failed({ code: 'no-such-charge', sentence: 'That is not charged here any more; load the page again.' });
  const { cause } = said;
  const { leavesOut } = charges.value.terms.papers.house.pricing.waiver;
  if (cause.kind === 'left out' && !leavesOut.includes(cause.words))
    return failed({
      code: 'cause-unknown',
      sentence: "Choose one of the things that this quote's damage waiver leaves out.",
    });
  write(tx, { context, said, booking: booking.value });
  const detail = { about: said.about, cause };
  logChange(tx, { context, deed: { action: 'cause said', subject: `booking ${booking.value.number}`, detail } });
  return ok({ cause: cause.kind });
}

function write(tx: DbOrTx, { context, said, booking }: Saying & { readonly booking: BookingRow }): void {
  const { cause } = said;
  const set = { cause: cause.kind, cause_words: cause.kind === 'left out' ? cause.words : '' };
  const [what, id = ''] = said.about.split(' ');
  if (what === 'piece') {
    changePiece(tx, { id: Number(id), set });
    return;
  }
  const latest = returnsOfBooking(tx, booking.id).at(-1);
  if (latest === undefined) return;
  const row = { return_id: latest.id, model_number: id };
  ensureCount(tx, { ...row, back: 0, at: timestamp(context), ...whoIs(context) });
  changeCountCause(tx, { returnId: latest.id, model: id, ...set });
}
