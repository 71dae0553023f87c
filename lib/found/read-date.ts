/*
 * Reads the day of a visit where it can be read in one way only, and tells it in words.
 * Invariant: day and month are never guessed: `03/04/2026` is no date.
 * Not here: whether the day lies in the future (read-found.ts).
 * Read next: read-found.ts.
 */
import type { IsoDate } from '#lib/kernel/date-range.ts';

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** `12 March 2026` */
export function dayText(date: IsoDate): string {
  const [year, month, day] = date.split('-');
  return `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

/** `2026-03-12`, `12.3.2026`, `12 March 2026`; null where it is none of these or no day of the calendar. */
export function readDate(text: string): IsoDate | null {
  const plain = text.trim().toLowerCase();
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(plain);
  if (iso) return dateOf(iso[1], iso[2], iso[3]);
  const dotted = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(plain);
  if (dotted) return dateOf(dotted[3], dotted[2], dotted[1]);
  const spoken = /^(\d{1,2})\.?\s+([a-z]{3,9})\.?\s+(\d{4})$/.exec(plain);
  if (!spoken) return null;
  const month = MONTHS.findIndex((name) => name.toLowerCase().startsWith((spoken[2] ?? '').slice(0, 3))) + 1;
  return month === 0 ? null : dateOf(spoken[3], String(month), spoken[1]);
}

function dateOf(year = '', month = '', day = ''): IsoDate | null {
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const time = Date.parse(`${date}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(date) ? date : null;
}
