/*
 * Calendar dates as ISO strings and half-open ranges of whole days.
 * Invariant: a range holds its first day and not its end day; start is before end.
 * Not here: time of day, time zones, the clock.
 * Read next: ../stock/.
 */
import { invariant } from './invariant.ts';

/** `YYYY-MM-DD`; compares as text. */
export type IsoDate = string;

export interface DateRange {
  readonly starts_on: IsoDate;
  /** First day that no longer belongs to the range. */
  readonly ends_before: IsoDate;
}

const DAY_MS = 86_400_000;

export function isIsoDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().slice(0, 10) === text;
}

export function addDays(date: IsoDate, days: number): IsoDate {
  invariant(isIsoDate(date), `${date} is not a calendar date in the form YYYY-MM-DD.`);
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}

export function daysBetween(range: DateRange): number {
  return Math.round(
    (Date.parse(`${range.ends_before}T00:00:00Z`) - Date.parse(`${range.starts_on}T00:00:00Z`)) / DAY_MS,
  );
}

export function rangeOfDays(startsOn: IsoDate, days: number): DateRange {
  invariant(days >= 1, 'A range of days holds at least one day.');
  return { starts_on: startsOn, ends_before: addDays(startsOn, days) };
}

export function overlaps(a: DateRange, b: DateRange): boolean {
  return a.starts_on < b.ends_before && b.starts_on < a.ends_before;
}
