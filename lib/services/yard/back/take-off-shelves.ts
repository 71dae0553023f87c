/*
 * Takes off the shelf what did not come back of counted pieces, when a booking is settled.
 * Invariant: a shelf never goes below nought; each change has its line in the shelf's history, with the booking's number.
 * Not here: charging it (charges-of.ts).
 * Read next: ../../../../db/queries/stock.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow } from '#db/queries/bookings.ts';
import { type ShelfRow, saveShelf, shelvesOf } from '#db/queries/stock.ts';
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
    let gone = sent - back;
    for (const shelf of shelvesOf(tx, model).toSorted(nearest(booking.depot))) {
      const taken = Math.min(Math.max(0, gone), shelf.count);
      gone -= taken;
      if (taken > 0) take(tx, { context, booking, shelf, taken });
    }
  }
}

/** The depot that sent it gives first; what it did not have itself came from another. */
function nearest(depot: string) {
  return (a: ShelfRow, b: ShelfRow): number => Number(b.depot === depot) - Number(a.depot === depot);
}

interface Taking extends Using {
  readonly shelf: ShelfRow;
  readonly taken: number;
}

function take(tx: DbOrTx, { context, booking, shelf, taken }: Taking): void {
  const { model_number, depot, count: before } = shelf;
  const after = before - taken;
  saveShelf(tx, { model_number, depot, count: after });
  addCountedEvent(tx, {
    model_number,
    depot,
    at: timestamp(context),
    who: actingPerson(context),
    before,
    after,
    reason: 'used up or lost on hire',
    reference: booking.number,
  });
}
