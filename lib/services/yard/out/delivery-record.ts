/*
 * A delivery as its services read it, with its booking and the state it must be in.
 * Invariant: only a delivery that is being loaded changes.
 * Not here: loading (load-delivery.ts) and leaving (send-delivery.ts).
 * Read next: load-delivery.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, findBookingById } from '#db/queries/bookings.ts';
import { type DeliveryRow, findDelivery } from '#db/queries/deliveries.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type LoadTransport, TRANSPORTS } from '#lib/stock/load-check.ts';

export interface DeliveryRecord {
  readonly row: DeliveryRow;
  readonly booking: BookingRow;
}

export function readDelivery(db: DbOrTx, id: number): Result<DeliveryRecord> {
  const row = findDelivery(db, id);
  const booking = row && findBookingById(db, row.booking_id);
  if (row && booking) return ok({ row, booking });
  return failed({ code: 'no-such-delivery', sentence: 'That delivery is not there; open the booking again.' });
}

export function deliveryBeingLoaded(db: DbOrTx, id: number): Result<DeliveryRecord> {
  const record = readDelivery(db, id);
  if (!record.ok || record.value.row.state === 'loading') return record;
  return failed({
    code: 'delivery-gone',
    sentence:
      record.value.row.state === 'left'
        ? 'This delivery has left; load the rest onto another.'
        : 'This delivery was taken back; begin another.',
  });
}

export function transportOf({ transport }: Pick<DeliveryRow, 'transport'>): LoadTransport {
  const known = TRANSPORTS.find((one) => one === transport);
  invariant(known !== undefined, `A delivery cannot go by ${transport}.`);
  return known;
}
