/*
 * Hire income by month: what accepted quotes bring without tax, in the month in which their hire starts.
 * Invariant: every amount of the currency lies in exactly one month or outside the months asked for; nothing is rounded.
 * Not here: charges after a hire, and quotes that nobody accepted.
 * Read next: priced-plan.ts.
 */
import type { IsoDate } from '#lib/kernel/date-range.ts';

export interface AcceptedQuote {
  readonly startsOn: IsoDate;
  readonly net_minor: number;
  readonly currency: string;
}

export interface IncomeMonth {
  /** `YYYY-MM`. */
  readonly month: string;
  readonly net_minor: number;
  readonly quotes: number;
}

export interface IncomeQuestion {
  readonly quotes: readonly AcceptedQuote[];
  readonly currency: string;
  readonly today: IsoDate;
  /** Months before that of today, and after it. */
  readonly back: number;
  readonly ahead: number;
}

export interface Income {
  readonly months: readonly IncomeMonth[];
  /** Accepted quotes of other currencies, which cannot be added. */
  readonly others: number;
}

export function incomeByMonth({ quotes, currency, today, back, ahead }: IncomeQuestion): Income {
  const own = quotes.filter((quote) => quote.currency === currency);
  const first = monthNumber(today) - back;
  const months = Array.from({ length: back + ahead + 1 }, (_, index) => {
    const number = first + index;
    const inside = own.filter(({ startsOn }) => monthNumber(startsOn) === number);
    const net_minor = inside.reduce((sum, quote) => sum + quote.net_minor, 0);
    return { month: monthName(number), net_minor, quotes: inside.length };
  });
  return { months, others: quotes.length - own.length };
}

function monthNumber(date: IsoDate): number {
  return Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7)) - 1;
}

function monthName(number: number): string {
  return `${Math.floor(number / 12)}-${String((number % 12) + 1).padStart(2, '0')}`;
}
