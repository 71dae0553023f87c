/*
 * Counted pieces of a booking: how many were sent with its deliveries, how many came back with its returns, and whether they are sold.
 * Invariant: reads only; a delivery that was taken back sent nothing.
 * Not here: counting (count-back.ts), charging (charges-of.ts).
 * Read next: ../../../../db/queries/deliveries.ts.
 */
import type { BookingRow } from '#db/queries/bookings.ts';
import { deliveriesOfBooking, itemsOfDelivery } from '#db/queries/deliveries.ts';
import { type BackCount, countsOfBooking } from '#db/queries/returns.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Context } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';

export interface CountedPieces {
  readonly model: string;
  readonly name: string;
  readonly isSold: boolean;
  readonly sent: number;
  readonly back: number;
  readonly unused: number;
  readonly returns: readonly BackCount[];
}

export function countedPieces(context: Context, booking: BookingRow): readonly CountedPieces[] {
  const { db } = context.database;
  const left = deliveriesOfBooking(db, booking.id).filter(({ state }) => state === 'left');
  const items = left.flatMap(({ id }) => itemsOfDelivery(db, id));
  const counts = countsOfBooking(db, booking.id);
  const models = new Map(knownModels(context).map((model) => [model.number, model]));
  return [...new Set(items.map(({ model }) => model))].toSorted().map((number) => {
    const mine = items.filter(({ model }) => model === number);
    const returns = counts.filter(({ model }) => model === number);
    return {
      model: number,
      name: mine[0]?.name ?? number,
      isSold: isSold(models.get(number)),
      sent: mine.reduce((sum, { count }) => sum + count, 0),
      back: returns.reduce((sum, { back }) => sum + back, 0),
      unused: returns.reduce((sum, { unused }) => sum + unused, 0),
      returns,
    };
  });
}

export function isSold(model: Model | undefined): boolean {
  return model?.role === 'accessory' && model.facts.saleItem === true;
}
