/*
 * How far the counted pieces of a booking are: how many wait here and how, how many are out, how many came back.
 * Invariant: reads only; what left is read from deliveries and what came back from counts, so a part delivery shows both.
 * Not here: counting them (picking/count-pieces.ts, out/load-delivery.ts, back/count-back.ts).
 * Read next: back/counted-pieces.ts.
 */
import { type BookingItemRow, type BookingRow, itemsOfBooking } from '#db/queries/bookings.ts';
import type { Context } from '#lib/services/context.ts';
import { hasEnded } from '#lib/stock/booking-life.ts';
import { countedPieces } from './back/counted-pieces.ts';
import { bookingStateOf } from './booking-record.ts';

export interface CountedStanding {
  readonly model: string;
  readonly count: number;
  readonly stands: string;
}

export function countedStanding(context: Context, booking: BookingRow): readonly CountedStanding[] {
  const rows = itemsOfBooking(context.database.db, booking.id).filter(({ state }) => state !== 'swapped');
  const moved = countedPieces(context, booking);
  return [...new Set(rows.map(({ model_number }) => model_number))].map((model) => {
    const mine = rows.filter(({ model_number }) => model_number === model);
    const { sent, back } = moved.find((one) => one.model === model) ?? { sent: 0, back: 0 };
    return { model, count: sumOf(mine), stands: tell({ booking, mine, sent, back }) };
  });
}

interface Telling {
  readonly booking: BookingRow;
  readonly mine: readonly BookingItemRow[];
  readonly sent: number;
  readonly back: number;
}

/** `held`; `3 out`; `1 picked, 2 out, 1 back`; what stayed here while the units left says so. */
function tell({ booking, mine, sent, back }: Telling): string {
  const state = bookingStateOf(booking);
  const here = mine.filter((row) => ['held', 'allocated', 'picked', 'released'].includes(row.state));
  const hasLeft = state === 'out' || state === 'back' || state === 'closed';
  const words = here.map(({ count, state: how }) => `${count} ${hasLeft && how === 'held' ? 'not sent' : how}`);
  if (sent === 0 && words.length === 1 && !hasLeft) return here[0]?.state ?? '';
  const away = sent - back;
  return [
    ...words,
    ...(away > 0 ? [`${away} ${hasEnded(state) ? 'not back' : 'out'}`] : []),
    ...(back > 0 ? [`${back} back`] : []),
  ].join(', ');
}

function sumOf(rows: readonly BookingItemRow[]): number {
  return rows.reduce((sum, { count }) => sum + count, 0);
}
