/*
 * A scan at check-in: what a label means, a piece with how it was found, or how many counted pieces are back.
 * Invariant: the return belongs to the booking that was asked for.
 * Not here: the deeds themselves (check-in.ts, count-back.ts).
 * Read next: check-in.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import type { YardScanRequest } from '#lib/contracts/yard-scan.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { type ScanAnswer, wrongLabel } from '../picking/scan-work.ts';
import { takePieceIn } from './check-in.ts';
import { countPiecesBack } from './count-back.ts';
import { findBookedPiece, mayComeIn } from './find-piece.ts';
import { readReturn, returnTakenIn } from './return-record.ts';

interface ReturnScan {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly scan: Extract<YardScanRequest, { readonly kind: 'look' | 'check in' | 'count back' }>;
}

export function scanForReturn(tx: DbOrTx, { context, booking, scan }: ReturnScan): Result<ScanAnswer> {
  const record = readReturn(tx, scan.return);
  if (!record.ok) return record;
  if (record.value.booking.id !== booking.id)
    return failed({
      code: 'not-of-this-booking',
      sentence: `That return belongs to booking ${record.value.booking.number}, not to ${booking.number}.`,
    });
  switch (scan.kind) {
    case 'look':
      return look(tx, { booking, scan });
    case 'check in':
      return checkIn(tx, { context, scan });
    case 'count back': {
      const read = readScan(scan.code);
      if (read.kind !== 'model') return wrongLabel(read, 'the label on the box');
      const { back, unused } = scan;
      const done = countPiecesBack(tx, { context, seen: { returnId: scan.return, model: read.model, back, unused } });
      return done.ok ? ok({ sentence: `${back} of ${read.model} are back.`, about: read.model }) : done;
    }
  }
}

/** What a label means, before anything is written: the awaited piece, or why it is none. */
function look(tx: DbOrTx, { booking, scan }: Pick<ReturnScan, 'booking' | 'scan'>): Result<ScanAnswer> {
  const open = returnTakenIn(tx, scan.return);
  if (!open.ok) return open;
  const found = findBookedPiece(tx, { booking, scan: scan.code });
  if (!found.ok) return found;
  const may = mayComeIn(found.value);
  const { serial } = found.value.unit;
  return may.ok ? ok({ sentence: `${serial} is awaited: say how it is.`, about: serial }) : may;
}

interface CheckingIn {
  readonly context: Context;
  readonly scan: Extract<YardScanRequest, { readonly kind: 'check in' }>;
}

function checkIn(tx: DbOrTx, { context, scan }: CheckingIn): Result<ScanAnswer> {
  const done = takePieceIn(tx, { context, seen: { returnId: scan.return, scan: scan.code, ...scan.seen } });
  if (!done.ok) return done;
  const { serial, unitState, orders } = done.value;
  const opened = orders.length === 0 ? '' : `, ${orders.join(', ')} opened`;
  return ok({ sentence: `${serial}: ${unitState}${opened}.`, about: serial });
}
