/*
 * What a price is made of, as plain facts, and the days that are charged.
 * Invariant: nothing of the pricing stands here but the shape of what it answers.
 * Not here: working the price out (expected-lines.ts).
 * Read next: expected-lines.ts.
 */
import type { ItemNeed } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';

export interface PriceFacts {
  readonly models: readonly Model[];
  readonly kits: readonly { readonly items: readonly ItemNeed[]; readonly time_s: number }[];
  readonly startsOn: IsoDate;
  readonly days: number;
  readonly charging: {
    readonly weekends: 'charged' | 'free';
    readonly holidays: 'charged' | 'free';
    readonly holidayDates: readonly IsoDate[];
  };
  readonly terms: {
    readonly currency: string;
    readonly taxCategories: readonly TaxRate[];
    readonly taxOf: Readonly<Record<'hire' | 'waiver' | 'sale' | 'delivery' | 'labour', string>>;
    readonly waiver: { readonly percent: number };
    readonly daysPerWeek: number;
  };
  readonly waiver: 'taken' | 'declined';
  readonly band: {
    readonly delivery_minor: number;
    readonly collection_minor: number;
    readonly included_kg: number;
    readonly per_extra_100_kg_minor: number;
  } | null;
  /** What an hour of our people costs where they do the work; null for dry hire. */
  readonly operated_minor_per_hour: number | null;
  readonly manual: readonly TypedLine[];
  readonly discounts: {
    readonly groups: readonly { readonly group: string; readonly percent: number }[];
    readonly whole: { readonly percent: number } | null;
  };
  readonly depositPercent: number | null;
  readonly priced: PricedFigures;
}

/** What somebody at the Desk added. */
export interface TypedLine {
  readonly kind: string;
  readonly quantity: number;
  readonly unit: string;
  readonly unit_minor: number;
  readonly per: 'day' | 'once';
  readonly tax: string;
  readonly list_minor: number | null;
}

interface TaxRate {
  readonly code: string;
  readonly name: string;
  readonly percent: number;
  readonly reason?: string;
}

/** The figures of a price; its sentences and notes are words. */
export interface PricedFigures {
  readonly currency: string;
  readonly days: number;
  readonly lines: readonly {
    readonly kind: string;
    readonly number: string;
    readonly quantity: number;
    readonly unit?: string;
    readonly unit_minor: number;
    readonly net_minor: number;
    readonly tax: string;
    readonly purchase_after_days: number | null;
  }[];
  readonly hire_minor: number;
  readonly groups: readonly { readonly group: string; readonly listed_minor: number; readonly given_minor: number }[];
  readonly taxes: readonly (TaxRate & { readonly taxable_minor: number; readonly tax_minor: number })[];
  readonly net_minor: number;
  readonly tax_minor: number;
  readonly gross_minor: number;
  readonly deposit_minor: number;
}

/** The days of the window one by one, without the free ones; at least one is charged, and days on the way are not. */
export function chargedDays({ startsOn, days, charging }: Pick<PriceFacts, 'startsOn' | 'days' | 'charging'>): number {
  const all = Array.from({ length: days }, (_, index) => addDays(startsOn, index));
  const isFree = (day: IsoDate): boolean =>
    (charging.weekends === 'free' && [0, 6].includes(new Date(day).getUTCDay())) ||
    (charging.holidays === 'free' && charging.holidayDates.includes(day));
  return Math.max(1, all.filter((day) => !isFree(day)).length);
}
