/*
 * Days, hours, amounts and durations as a language writes them.
 * Invariant: an amount keeps all decimals of its currency; a day is never ambiguous between two orders.
 * Not here: the forms that a person of the house chose (lib/documents/words/person-forms.ts).
 * Read next: wording.ts.
 */
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { decimalText } from '#lib/money/currency.ts';
import type { Language } from './language.ts';

const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

export function dayIn(language: Language, day: IsoDate): string {
  const [year = '', month = '', date = ''] = day.slice(0, 10).split('-');
  if (language === 'de') return `${date}.${month}.${year}`;
  return `${Number(date)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

/** Hour and minute of a moment in UTC. */
export function hourOf(moment: string): string {
  return moment.slice(11, 16);
}

export function amountIn(
  language: Language,
  { amount_minor, currency }: { readonly amount_minor: number; readonly currency: string },
): string {
  const [whole = '', part] = decimalText(Math.abs(amount_minor), currency).split('.');
  // A thin gap between thousands reads the same in both languages (ISO 80000-1, 7.3.1).
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, '\u202f');
  const mark = language === 'de' ? ',' : '.';
  return `${amount_minor < 0 ? '−' : ''}${spaced}${part === undefined ? '' : `${mark}${part}`}`;
}

/** `45 s`, `12 min`, `3 h 20 min`, the same in both languages. */
export function durationIn(total_s: number): string {
  if (total_s < 90) return `${Math.max(1, Math.round(total_s))} s`;
  const total = Math.round(total_s / 60);
  const hours = Math.floor(total / 60);
  return hours === 0 ? `${total} min` : `${hours} h ${total % 60} min`;
}
