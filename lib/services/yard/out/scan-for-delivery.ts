/*
 * A scan that loads a delivery, takes a piece off it again, or counts counted pieces onto it.
 * Invariant: the delivery belongs to the booking that was asked for.
 * Not here: the deeds themselves (load-delivery.ts).
 * Read next: load-delivery.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import type { YardScanRequest } from '#lib/contracts/yard-scan.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { type ScanAnswer, wrongLabel } from '../picking/scan-work.ts';
import { readDelivery } from './delivery-record.ts';
import { countOnto, loadOnto, takeOffFrom } from './load-delivery.ts';

interface DeliveryScan {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly scan: Extract<YardScanRequest, { readonly kind: 'load' | 'take off' | 'count on' }>;
}

export function scanForDelivery(tx: DbOrTx, { context, booking, scan }: DeliveryScan): Result<ScanAnswer> {
  const deliveryId = scan.delivery;
  const record = readDelivery(tx, deliveryId);
  if (!record.ok) return record;
  if (record.value.booking.id !== booking.id)
    return failed({
      code: 'not-of-this-booking',
      sentence: `That delivery belongs to booking ${record.value.booking.number}, not to ${booking.number}.`,
    });
  switch (scan.kind) {
    case 'load': {
      const done = loadOnto(tx, { context, deliveryId, scan: scan.code });
      return done.ok ? ok({ sentence: done.value.said, about: done.value.loaded.join(', ') }) : done;
    }
    case 'take off': {
      const read = readScan(scan.code);
      if (read.kind !== 'unit') return wrongLabel(read, 'the serial number of a piece');
      const done = takeOffFrom(tx, { context, deliveryId, serial: read.serial });
      return done.ok ? ok({ sentence: `${read.serial} is off again.`, about: read.serial }) : done;
    }
    case 'count on': {
      const read = readScan(scan.code);
      if (read.kind !== 'model') return wrongLabel(read, 'the label on the box');
      const { model } = read;
      const done = countOnto(tx, { context, deliveryId, model, count: scan.count });
      return done.ok ? ok({ sentence: `${scan.count} of ${model} are on it.`, about: model }) : done;
    }
  }
}
