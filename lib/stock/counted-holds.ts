/*
 * How many pieces of a counted model are held at the most on any one day.
 * Invariant: the answer is reached on a first day of some hold or of the days asked about, so only those are looked at.
 * Not here: how many the house has.
 * Read next: free-units.ts.
 */
import { type DateRange, overlaps } from '#lib/kernel/date-range.ts';

interface CountedHold {
  readonly count: number;
  /** Turnaround included. */
  readonly days: DateRange;
}

interface MostHeld {
  readonly holds: readonly CountedHold[];
  readonly days: DateRange;
}

export function mostHeld({ holds, days }: MostHeld): number {
  const within = holds.filter((hold) => overlaps(hold.days, days));
  const firsts = [days.starts_on, ...within.map((hold) => hold.days.starts_on)].filter((day) => day >= days.starts_on);
  return Math.max(
    ...firsts.map((day) =>
      within.reduce(
        (sum, { count, days: held }) => sum + (held.starts_on <= day && day < held.ends_before ? count : 0),
        0,
      ),
    ),
  );
}
