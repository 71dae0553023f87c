/*
 * Until when equipment is held for somebody who has not confirmed, and over which days a unit of a booking is really engaged.
 * Invariant: a hold that has run out engages nothing, whether or not anybody has written that down; a unit that is out past its last day engages today, and one that left early from then on.
 * Not here: releasing the units of a lapsed hold (lib/services/yard/expire-holds.ts).
 * Read next: booking-life.ts, free-units.ts.
 */
import { addDays, type DateRange, type IsoDate } from '#lib/kernel/date-range.ts';
import { type BookedUnitState, type BookingState, holds } from './booking-life.ts';

interface Hold {
  readonly state: BookingState;
  /** A moment (ISO 8601, UTC); null where nothing has to be confirmed. */
  readonly heldUntil: string | null;
  readonly now: Date;
}

/** The stated moment itself no longer belongs to the hold. */
export function hasRunOut({ state, heldUntil, now }: Hold): boolean {
  return state === 'held' && heldUntil !== null && Date.parse(heldUntil) <= now.getTime();
}

interface Engagement {
  readonly state: BookedUnitState;
  readonly window: DateRange;
  /** The day on which it left; null while it has not. */
  readonly outOn: IsoDate | null;
  /** What the customer said of a unit that is late; null where nobody said anything. */
  readonly expectedBackOn: IsoDate | null;
  /** The day on which it came back; null while it has not. */
  readonly backOn: IsoDate | null;
  readonly today: IsoDate;
}

/** The days on which the unit is away or kept; null where it holds nothing any more. */
export function engagedDays({ state, window, outOn, expectedBackOn, backOn, today }: Engagement): DateRange | null {
  if (!holds(state)) return null;
  const starts_on = outOn !== null && outOn < window.starts_on ? outOn : window.starts_on;
  // The day on which it comes back still belongs to the hire, and what is out is not here today.
  const lastDays = state === 'out' ? [today, expectedBackOn] : state === 'back' ? [backOn] : [];
  const ends = [window.ends_before, ...lastDays.flatMap((day) => (day === null ? [] : [addDays(day, 1)]))];
  return { starts_on, ends_before: ends.toSorted().at(-1) ?? window.ends_before };
}
