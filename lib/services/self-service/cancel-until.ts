/*
 * Until when an acceptance may be taken back without the Desk.
 * Invariant: a moment that follows from the first day of hire and the house's hour alone, the same wherever it is shown or asked.
 * Not here: taking it back (accept-order.ts).
 * Read next: accept-order.ts, self-facts.ts.
 */
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { selfServiceFacts } from './self-facts.ts';

export function cancelUntil(context: Context, startsOn: IsoDate): string {
  const hour = String(selfServiceFacts(context).cancel_until_hour).padStart(2, '0');
  return `${addDays(startsOn, -1)}T${hour}:00:00.000Z`;
}
