/*
 * A scan on the walk of a day: finds the booking that the piece is for and picks it there, with the answers that the booking's own list gives.
 * Invariant: the booking that holds the unit comes first, then one that waits for its model, then one that it may stand in for; never two.
 * Not here: what picking decides (scan-unit.ts), keeping the answer (../answer-once.ts).
 * Read next: ../take-scan.ts, open-walk.ts.
 */
import type { WalkScanRequest } from '#lib/contracts/yard-scan.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { answerOnce, type Done, orNothing, type Tx } from '../answer-once.ts';
import { workOnScan } from '../take-scan.ts';
import { unitWith } from '../unit-places.ts';
import { isPicked } from './pick-facts.ts';
import type { ScanAnswer } from './scan-work.ts';
import { type WalkBooking, walkBookings } from './walk-bookings.ts';

export function walkScan(context: Context, scan: WalkScanRequest): Result<ScanAnswer> {
  const allowed = authorise(context, 'book equipment');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx) =>
      answerOnce(tx, { context, key: scan.key, asked: scan, bookingId: null }, () => pickOnWalk(tx, { context, scan })),
    { behavior: 'immediate' },
  );
}

interface Walking {
  readonly context: Context;
  readonly scan: WalkScanRequest;
}

function pickOnWalk(tx: Tx, { context, scan }: Walking): Result<Done> {
  const leaving = walkBookings(tx, { context, day: scan.day }).filter(({ booking }) => booking.state !== 'held');
  const candidates = candidatesFor(tx, { leaving, code: scan.code });
  const tried = candidates.map((one) => () => pickFor(tx, { context, scan, one }));
  let first: Done | undefined;
  for (const pick of tried) {
    const done = pick();
    if (done.answer.ok) return ok(done);
    first ??= done;
  }
  if (first !== undefined) return ok(first);
  return failed({
    code: 'walk-empty',
    sentence: `No confirmed booking leaves on ${scan.day}: there is nothing to pick on this walk.`,
  });
}

interface Choosing {
  readonly leaving: readonly WalkBooking[];
  readonly code: string;
}

/** One where it is clear whose it is; several where the rules decide whether it may stand in. */
function candidatesFor(tx: Tx, { leaving, code }: Choosing): readonly WalkBooking[] {
  const read = readScan(code);
  if (read.kind !== 'unit') return leaving.slice(0, 1);
  const holder = leaving.find(({ facts }) => facts.pieces.some(({ row }) => row.unit_serial === read.serial));
  if (holder) return [holder];
  const unit = unitWith(tx, read.serial);
  if (!unit.ok) return leaving.slice(0, 1);
  const model = unit.value.model_number;
  const waits = leaving.find(({ facts }) =>
    facts.pieces.some(({ row, planned }) => planned === model && !isPicked(row)),
  );
  if (waits) return [waits];
  const planned = leaving.filter(({ facts }) => facts.pieces.some((piece) => piece.planned === model));
  return planned.length > 0 ? planned.slice(0, 1) : leaving;
}

function pickFor(tx: Tx, { context, scan, one }: Walking & { readonly one: WalkBooking }): Done {
  const { booking, movement } = one;
  const answer = orNothing(tx, (inner) =>
    workOnScan(inner, { context, booking, scan: { key: scan.key, kind: 'pick', code: scan.code } }),
  );
  if (!answer.ok) return { booking, answer };
  const whose = [booking.number, movement.customer ?? ''].filter((part) => part !== '').join(', ');
  return { booking, answer: ok({ ...answer.value, sentence: `${answer.value.sentence} Into the crate of ${whose}.` }) };
}
