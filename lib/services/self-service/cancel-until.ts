/*
 * Until when an acceptance may be taken back without the Desk.
 * Invariant: a moment that follows from the first day of hire alone, the same wherever it is shown or asked.
 * Not here: taking it back (accept-order.ts).
 * Read next: accept-order.ts.
 */
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';

/** Noon of the day before (UTC): the yard picks in the afternoon. House practice, no source. */
export function cancelUntil(startsOn: IsoDate): string {
  return `${addDays(startsOn, -1)}T12:00:00.000Z`;
}
