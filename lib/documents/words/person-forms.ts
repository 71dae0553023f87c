/*
 * Dates and numbers on screens in the form that a person likes; papers keep the one form of print-values.ts.
 * Invariant: day first goes with dots and month first with strokes, so that the two are told apart at a glance.
 * Not here: units (units/format-quantity.ts), who likes what (services/access/preferences.ts).
 * Read next: print-values.ts.
 */
import { addDays, type DateRange, daysBetween, type IsoDate } from '#lib/kernel/date-range.ts';
import { countText, dateText, moneyText } from './print-values.ts';

export const DATE_FORMS = ['written', 'iso', 'day-month-year', 'month-day-year'] as const;
export type DateForm = (typeof DATE_FORMS)[number];

export const DECIMAL_MARKS = ['point', 'comma'] as const;
export type DecimalMark = (typeof DECIMAL_MARKS)[number];

export interface PersonForms {
  readonly dates: DateForm;
  readonly decimals: DecimalMark;
}

export function dateIn(date: IsoDate, form: DateForm): string {
  const [year = '', month = '', day = ''] = date.split('-');
  switch (form) {
    case 'written':
      return dateText(date);
    case 'iso':
      return date;
    case 'day-month-year':
      return `${day}.${month}.${year}`;
    case 'month-day-year':
      return `${month}/${day}/${year}`;
  }
}

/** A moment to the minute, in UTC as it is kept. */
export function momentIn(at: string, form: DateForm): string {
  return `${dateIn(at.slice(0, 10), form)}, ${at.slice(11, 16)}`;
}

/** First and last day of a half-open range; a single day is said once. */
export function windowIn(window: DateRange, form: DateForm): string {
  const days = daysBetween(window);
  const first = dateIn(window.starts_on, form);
  if (days === 1) return `${first} (1 day)`;
  return `${first} to ${dateIn(addDays(window.ends_before, -1), form)} (${countText(days, 'day')})`;
}

/** A text of figures with the decimal mark of a person; thousands stay parted by spaces (ISO 80000-1, 7.3.1). */
export function figuresIn(text: string, mark: DecimalMark): string {
  return mark === 'comma' ? text.replace(/(\d)\.(?=\d)/g, '$1,') : text;
}

export function moneyIn({
  amount_minor,
  currency,
  mark,
}: {
  readonly amount_minor: number;
  readonly currency: string;
  readonly mark: DecimalMark;
}): string {
  return figuresIn(moneyText(amount_minor, currency), mark);
}
