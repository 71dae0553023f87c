/*
 * Answers what a screen of the yard sent under a key of its own: once, and alike whenever the key comes again.
 * Invariant: the answer is kept in the transaction that did what it says; a refusal leaves nothing behind but itself.
 * Not here: what is done (take-scan.ts, picking/walk-scan.ts, back/take-photo.ts).
 * Read next: ../../../db/schema/yard-scan.ts.
 */
import type { Db } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import { findScan, insertScan } from '#db/queries/picking.ts';
import { keepOrTakeBack } from '#db/take-back.ts';
import { failed, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import type { ScanAnswer } from './picking/scan-work.ts';

export type Tx = Parameters<Parameters<Db['transaction']>[0]>[0];

export interface AskedOnce {
  readonly context: Context;
  readonly key: string;
  /** What was asked, so that no other question gets its answer. */
  readonly asked: unknown;
  /** The booking it was asked for; null where the house finds it. */
  readonly bookingId: number | null;
}

/** What came of it, and the booking that it came to. */
export interface Done {
  readonly booking: BookingRow;
  readonly answer: Result<ScanAnswer>;
}

/** `decide` is asked only where the key is new; where it finds no booking, its refusal is answered and not kept. */
export function answerOnce(
  tx: Tx,
  { context, key, asked, bookingId }: AskedOnce,
  decide: () => Result<Done>,
): Result<ScanAnswer> {
  const askedJson = JSON.stringify(asked);
  const before = findScan(tx, key);
  if (before) {
    const isSame = before.asked_json === askedJson && (bookingId === null || bookingId === before.booking_id);
    if (isSame) return JSON.parse(before.answer_json) as Result<ScanAnswer>;
    return failed({ code: 'scan-key-used', sentence: 'Another scan was sent under this key: scan it again.' });
  }
  const decided = decide();
  if (!decided.ok) return decided;
  const { booking, answer } = decided.value;
  const person = actingPerson(context);
  insertScan(tx, {
    key,
    booking_id: booking.id,
    asked_json: askedJson,
    answer_json: JSON.stringify(answer),
    at: timestamp(context),
    who_id: person.id,
    who: person.name,
  });
  return answer;
}

/** In a savepoint that a refusal takes back. */
export function orNothing(tx: Tx, doIt: (inner: Tx) => Result<ScanAnswer>): Result<ScanAnswer> {
  return keepOrTakeBack<Tx, Result<ScanAnswer>>(
    (within) => tx.transaction(within),
    (inner) => {
      const answer = doIt(inner);
      return { answer, outcome: answer.ok ? 'kept' : 'taken back' };
    },
  );
}
