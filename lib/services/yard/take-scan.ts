/*
 * Takes one scan of the yard for a booking: picking, packing, loading a delivery, checking a return in.
 * Invariant: a key is answered once; only who may do the deed itself gets it done.
 * Not here: keeping answers (answer-once.ts), what each kind of scan does.
 * Read next: picking/scan-unit.ts, out/scan-for-delivery.ts, back/scan-for-return.ts.
 */
import type { BookingRow } from '#db/queries/bookings.ts';
import type { YardScanRequest } from '#lib/contracts/yard-scan.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise, type Permission } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { answerOnce, orNothing, type Tx } from './answer-once.ts';
import { scanForReturn } from './back/scan-for-return.ts';
import { bookingNumbered } from './booking-record.ts';
import { scanForDelivery } from './out/scan-for-delivery.ts';
import { packPiece, unpackPiece } from './packing/pack-piece.ts';
import { countPieces } from './picking/count-pieces.ts';
import { scanUnit } from './picking/scan-unit.ts';
import type { ScanAnswer, ScanWork } from './picking/scan-work.ts';
import { stillInTheYard } from './picking/still-in-the-yard.ts';
import { undoScan } from './picking/undo-scan.ts';

export interface BookingScan {
  readonly number: string;
  readonly scan: YardScanRequest;
}

export function takeScan(context: Context, { number, scan }: BookingScan): Result<ScanAnswer> {
  const allowed = authorise(context, permissionFor(scan));
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx) => {
      const found = bookingNumbered(tx, number);
      if (!found.ok) return found;
      const booking = found.value;
      return answerOnce(tx, { context, key: scan.key, asked: scan, bookingId: booking.id }, () =>
        ok({ booking, answer: orNothing(tx, (inner) => workOnScan(inner, { context, booking, scan })) }),
      );
    },
    { behavior: 'immediate' },
  );
}

function permissionFor({ kind }: YardScanRequest): Permission {
  switch (kind) {
    case 'load':
    case 'take off':
    case 'count on':
      return 'send equipment out';
    case 'look':
    case 'check in':
    case 'count back':
      return 'take equipment back';
    default:
      return 'book equipment';
  }
}

interface ScanOfBooking {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly scan: YardScanRequest;
}

/** Within a transaction of whoever asks. */
export function workOnScan(tx: Tx, { context, booking, scan }: ScanOfBooking): Result<ScanAnswer> {
  switch (scan.kind) {
    case 'load':
    case 'take off':
    case 'count on':
      return scanForDelivery(tx, { context, booking, scan });
    case 'look':
    case 'check in':
    case 'count back':
      return scanForReturn(tx, { context, booking, scan });
    default:
      return workInTheYard(tx, { context, booking, scan });
  }
}

type PickingScan = Extract<YardScanRequest, { readonly kind: keyof typeof DEEDS }>;

function workInTheYard(
  tx: Tx,
  { context, booking, scan }: Omit<ScanOfBooking, 'scan'> & { readonly scan: PickingScan },
): Result<ScanAnswer> {
  const stays = stillInTheYard(booking);
  if (!stays.ok) return stays;
  const done = doScan({ tx, context, booking, read: readScan(scan.code) }, scan);
  if (!done.ok) return done;
  const { key: _, ...detail } = scan;
  logChange(tx, {
    context,
    deed: {
      action: DEEDS[scan.kind],
      subject: `booking ${booking.number}`,
      detail: { ...detail, said: done.value.sentence },
    },
  });
  return done;
}

const DEEDS = {
  pick: 'piece picked',
  count: 'pieces counted',
  undo: 'picking taken back',
  pack: 'piece packed',
  unpack: 'piece taken out of its case',
} as const;

function doScan(at: ScanWork, scan: PickingScan): Result<ScanAnswer> {
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
