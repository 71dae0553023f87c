/*
 * How long equipment is under way between two depots of the house, and over which days a unit on its way is free at neither.
 * Invariant: what is overdue and has not arrived is not free today.
 * Not here: what is on its way (lib/services/stock).
 * Read next: free-units.ts.
 */
import { addDays, type DateRange, type IsoDate } from '#lib/kernel/date-range.ts';

/** Loaded on one day, usable on the next. House practice, no source. */
export const TRANSFER_DAYS = 1;

interface OnTheWay {
  readonly sentOn: IsoDate;
  readonly dueOn: IsoDate;
  readonly today: IsoDate;
}

export function daysOnTheWay({ sentOn, dueOn, today }: OnTheWay): DateRange {
  const tomorrow = addDays(today, 1);
  return { starts_on: sentOn, ends_before: dueOn > tomorrow ? dueOn : tomorrow };
}
