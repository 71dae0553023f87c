/*
 * The figures of the home page's charts: hire income by month and how much of the equipment is out.
 * Invariant: reads only; the window asked for is one of those offered.
 * Not here: drawing them (app).
 * Read next: ../../pricing/income-months.ts, ../../stock/utilisation.ts.
 */
import { acceptedQuotes, unitsBookedWithin } from '#db/queries/home.ts';
import { addDays, type DateRange, type IsoDate, rangeOfDays } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { type Income, incomeByMonth } from '#lib/pricing/income-months.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { type ModelUse, overDepots, utilisation } from '#lib/stock/utilisation.ts';
import { houseFacts, houseModels, stockQuestion } from './house-facts.ts';

export const USE_WINDOWS = [28, 90, 364] as const;
export type UseWindow = (typeof USE_WINDOWS)[number];

export interface HouseFigures {
  readonly today: IsoDate;
  readonly income: Income;
  readonly currency: string;
  readonly window: DateRange;
  readonly depot: string;
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  /** The most used first. */
  readonly use: readonly (ModelUse & { readonly name: string })[];
  readonly whole: number;
}

interface FiguresAsked {
  readonly days: UseWindow;
  /** Code of a depot; empty for all of them. */
  readonly depot: string;
}

const MONTHS = { back: 6, ahead: 5 } as const;

export function openHouseFigures(context: Context, { days, depot }: FiguresAsked): Result<HouseFigures> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const day = today(context);
  const house = houseFacts(context);
  const window = rangeOfDays(addDays(day, -days / 2), days);
  const rows = utilisation({
    units: stockQuestion(context, { window }).units.filter((unit) => depot === '' || unit.depot === depot),
    bookings: unitsBookedWithin(db, window).map(({ serial, ...booked }) => ({ serial, window: booked })),
    window,
  });
  const names = new Map(houseModels(context).map(({ number, name }) => [number, name]));
  const unitDays = rows.reduce((sum, row) => sum + row.unitDays, 0);
  const bookedDays = rows.reduce((sum, row) => sum + row.bookedDays, 0);
  return ok({
    today: day,
    income: incomeByMonth({
      quotes: acceptedQuotes(db, `${Number(day.slice(0, 4)) - 1}${day.slice(4)}`),
      currency: house.pricing.currency,
      today: day,
      ...MONTHS,
    }),
    currency: house.pricing.currency,
    window,
    depot,
    depots: house.depots.map(({ code, name }) => ({ code, name })),
    use: overDepots(rows).map((row) => ({ ...row, name: names.get(row.model) ?? row.model })),
    whole: unitDays === 0 ? 0 : bookedDays / unitDays,
  });
}
