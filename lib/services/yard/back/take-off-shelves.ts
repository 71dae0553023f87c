/*
 * Takes off the shelf what did not come back of counted pieces, when a booking is settled.
 * Invariant: a shelf never goes below nought; each change has its line in the shelf's history, with the booking's number.
 * Not here: charging it (charges-of.ts).
 * Read next: ../../../../db/queries/stock.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import { findShelf, saveShelf, shelvesOf } from '#db/queries/stock.ts';
import { addCountedEvent } from '#db/queries/unit-events.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { countedPieces } from './counted-pieces.ts';

interface Using {
  readonly context: Context;
  readonly booking: BookingRow;
}

export function takeOffShelves(tx: DbOrTx, { context, booking }: Using): void {
  for (const { model, sent, back } of countedPieces(context, booking)) {
    const gone = sent - back;
    const shelf = findShelf(tx, { model, depot: booking.depot }) ?? shelvesOf(tx, model)[0];
    if (gone <= 0 || shelf === undefined) continue;
    const after = Math.max(0, shelf.count - gone);
    saveShelf(tx, { model_number: model, depot: shelf.depot, count: after });
    addCountedEvent(tx, {
      model_number: model,
      depot: shelf.depot,
      at: timestamp(context),
      who: actingPerson(context),
      before: shelf.count,
      after,
      reason: 'used up or lost on hire',
      reference: booking.number,
    });
  }
}
