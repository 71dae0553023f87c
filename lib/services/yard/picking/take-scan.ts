/*
 * Takes one scan of the yard: answers it once, and answers it alike whenever its key comes again.
 * Invariant: the answer is kept in the transaction that did what it says; a refusal leaves nothing behind but itself.
 * Not here: what each kind of scan does (scan-unit.ts, count-pieces.ts, undo-scan.ts, ../packing/pack-piece.ts).
 * Read next: scan-unit.ts.
 */
import type { Db } from '#db/client.ts';
import { findScan, insertScan } from '#db/queries/picking.ts';
import { keepOrTakeBack } from '#db/take-back.ts';
import type { YardScanRequest } from '#lib/contracts/yard-scan.ts';
import { failed, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { bookingNumbered } from '../booking-record.ts';
import { packPiece, unpackPiece } from '../packing/pack-piece.ts';
import { countPieces } from './count-pieces.ts';
import { scanUnit } from './scan-unit.ts';
import type { ScanAnswer, ScanWork } from './scan-work.ts';
import { stillInTheYard } from './still-in-the-yard.ts';
import { undoScan } from './undo-scan.ts';

export interface BookingScan {
  readonly number: string;
  readonly scan: YardScanRequest;
}

export function takeScan(context: Context, { number, scan }: BookingScan): Result<ScanAnswer> {
  const allowed = authorise(context, 'book equipment');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => answerOnce(tx, { context, number, scan }), { behavior: 'immediate' });
}

type Tx = Parameters<Parameters<Db['transaction']>[0]>[0];

interface Asked extends BookingScan {
  readonly context: Context;
}

function answerOnce(tx: Tx, asked: Asked): Result<ScanAnswer> {
  const { context, number, scan } = asked;
  const found = bookingNumbered(tx, number);
  if (!found.ok) return found;
  const askedJson = JSON.stringify(scan);
  const before = findScan(tx, scan.key);
  if (before) {
    if (before.booking_id === found.value.id && before.asked_json === askedJson)
      return JSON.parse(before.answer_json) as Result<ScanAnswer>;
    return failed({ code: 'scan-key-used', sentence: 'Another scan was sent under this key: scan it again.' });
  }
  const answer = orNothing(tx, (inner) => work({ ...asked, tx: inner, booking: found.value }));
  const person = actingPerson(context);
  insertScan(tx, {
    key: scan.key,
    booking_id: found.value.id,
    asked_json: askedJson,
    answer_json: JSON.stringify(answer),
    at: timestamp(context),
    who_id: person.id,
    who: person.name,
  });
  return answer;
}

/** In a savepoint that a refusal takes back. */
function orNothing(tx: Tx, doIt: (inner: Tx) => Result<ScanAnswer>): Result<ScanAnswer> {
  return keepOrTakeBack<Tx, Result<ScanAnswer>>(
    (within) => tx.transaction(within),
    (inner) => {
      const answer = doIt(inner);
      return { answer, outcome: answer.ok ? 'kept' : 'taken back' };
    },
  );
}

function work({ scan, ...at }: Asked & Pick<ScanWork, 'tx' | 'booking'>): Result<ScanAnswer> {
  const stays = stillInTheYard(at.booking);
  if (!stays.ok) return stays;
  const done = doScan({ ...at, read: readScan(scan.code) }, scan);
  if (!done.ok) return done;
  const subject = `booking ${at.booking.number}`;
  const { key: _, ...detail } = scan;
  logChange(at.tx, {
    context: at.context,
    deed: { action: DEEDS[scan.kind], subject, detail: { ...detail, said: done.value.sentence } },
  });
  return done;
}

const DEEDS = {
  pick: 'piece picked',
  count: 'pieces counted',
  undo: 'picking taken back',
  pack: 'piece packed',
  unpack: 'piece taken out of its case',
} as const satisfies Readonly<Record<YardScanRequest['kind'], string>>;

function doScan(at: ScanWork, scan: YardScanRequest): Result<ScanAnswer> {
  switch (scan.kind) {
    case 'pick':
      return scanUnit(at);
    case 'count':
      return countPieces({ ...at, count: scan.count });
    case 'undo':
      return undoScan(at);
    case 'pack':
      return packPiece({ ...at, into: scan.case });
    case 'unpack':
      return unpackPiece(at);
  }
}
