/*
 * Small prints that papers share: money, dates, counts, bases.
 * Invariant: money shows all decimals of its currency; dates are written out so that no one mistakes day for month.
 * Not here: other physical quantities (units/format-quantity.ts).
 * Read next: ../papers/paper.ts.
 */
import { addDays, type DateRange, daysBetween, type IsoDate } from '#lib/kernel/date-range.ts';
import { decimalText } from '#lib/money/currency.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import type { Basis } from '#lib/units/known-value.ts';

export const MONTHS: readonly string[] = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** `12 345.60`, with a space between thousands (ISO 80000-1, 7.3.1). */
export function moneyText(amount_minor: number, currency: string): string {
  const [whole = '', part] = decimalText(Math.abs(amount_minor), currency).split('.');
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, ' ');
  return `${amount_minor < 0 ? '−' : ''}${spaced}${part === undefined ? '' : `.${part}`}`;
}

export function dateText(date: IsoDate): string {
  const [year, month, day] = date.split('-');
  return `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

/** First and last day of a half-open range; a single day is said once. */
export function windowText(window: DateRange): string {
  const days = daysBetween(window);
  if (days === 1) return `${dateText(window.starts_on)} (1 day)`;
  return `${dateText(window.starts_on)} to ${dateText(addDays(window.ends_before, -1))} (${countText(days, 'day')})`;
}

export function countText(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

export function hoursText(hours: number): string {
  const minutes = Math.round(hours * 60);
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
}

export function massText(kilograms: number, system: UnitSystem): string {
  const { value, unit } = massIn(kilograms, system);
  return `${value < 100 ? value.toFixed(1) : String(Math.round(value))} ${unit}`;
}

export function massIn(kilograms: number, system: UnitSystem): { readonly value: number; readonly unit: string } {
  return system === 'si' ? { value: kilograms, unit: 'kg' } : { value: kilograms / KILOGRAMS_PER_POUND, unit: 'lb' };
}

/** Exact (NIST SP 811, appendix B.6). */
const KILOGRAMS_PER_POUND = 0.453_592_37;

/** One letter per basis, explained once per paper. */
export const BASIS_MARKS: Readonly<Record<Basis, string>> = {
  measured: 'M',
  stated: 'S',
  standard: 'N',
  computed: 'C',
  'rule of thumb': 'R',
  assumed: 'A',
};

export const BASIS_LEGEND =
  'Basis of a value: M measured, S stated, N from a standard or table, C computed, R rule of thumb, A assumed.';

export function listText(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** `GV-101, GV-102 and 37 more` */
export function tagsText(tags: readonly string[], shown: number): string {
  return tags.length <= shown ? listText(tags) : `${tags.slice(0, shown).join(', ')} and ${tags.length - shown} more`;
}
