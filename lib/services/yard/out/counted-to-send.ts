/*
 * Counted pieces of a booking: how many are booked, how many left with its deliveries.
 * Invariant: reads only; a delivery that was taken back sent nothing.
 * Not here: loading them (load-delivery.ts).
 * Read next: load-delivery.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, itemsOfBooking } from '#db/queries/bookings.ts';
import { deliveriesOfBooking, itemsOfDelivery } from '#db/queries/deliveries.ts';

export interface CountedToSend {
  readonly model: string;
  readonly booked: number;
  readonly sent: number;
}

export function countedToSend(db: DbOrTx, booking: BookingRow): readonly CountedToSend[] {
  const items = itemsOfBooking(db, booking.id).filter(({ state }) => state !== 'released' && state !== 'swapped');
  const left = deliveriesOfBooking(db, booking.id)
    .filter(({ state }) => state === 'left')
    .flatMap(({ id }) => itemsOfDelivery(db, id));
  return [...new Set(items.map(({ model_number }) => model_number))].toSorted().map((model) => ({
    model,
    booked: items.filter(({ model_number }) => model_number === model).reduce((sum, { count }) => sum + count, 0),
    sent: left.filter((item) => item.model === model).reduce((sum, { count }) => sum + count, 0),
  }));
}
