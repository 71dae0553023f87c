/*
 * Hires ahead whose equipment is not there on their dates: planned ones that lack free pieces, booked ones whose units cannot go.
 * Invariant: an enquiry's own bookings never count against it; a sentence names the model or unit and the reason.
 * Not here: planning around it.
 * Read next: ../../stock/shortage.ts.
 */
import { plannedKits, unitsBookedAhead } from '#db/queries/home.ts';
import { type DateRange, type IsoDate, rangeOfDays } from '#lib/kernel/date-range.ts';
import { type Context, today } from '#lib/services/context.ts';
import { tellWaiter, waitersFor } from '#lib/services/stock/shortage-answer.ts';
import { fallsDue, isHireable } from '#lib/stock/free-units.ts';
import { findShortages } from '#lib/stock/shortage.ts';
import type { Unit } from '#lib/stock/unit.ts';
import { houseModels, stockQuestion } from './house-facts.ts';

export interface Short {
  readonly enquiryId: number;
  readonly number: string;
  readonly title: string;
  readonly customer: string;
  readonly kind: 'planned' | 'booked';
  readonly startsOn: IsoDate;
  readonly sentences: readonly string[];
}

export function shortAhead(context: Context): readonly Short[] {
  return [...bookedShort(context), ...plannedShort(context)].toSorted((a, b) => (a.startsOn < b.startsOn ? -1 : 1));
}

function plannedShort(context: Context): readonly Short[] {
  const day = today(context);
  // What is made to order is never in stock, and so never short.
  const made = new Set(houseModels(context).flatMap((model) => (model.madeToOrder ? [model.number] : [])));
  return plannedKits(context.database.db).flatMap(({ startsOn, days, kitsJson, ...named }) => {
    if (startsOn === null || kitsJson === null) return [];
    const window = rangeOfDays(startsOn, days ?? 1);
    if (window.starts_on < day) return [];
    const needs = needsOf(kitsJson).filter(({ model }) => !made.has(model));
    const question = stockQuestion(context, { window, enquiryId: named.enquiryId });
    const missing = findShortages({ ...question, needs });
    if (missing.length === 0) return [];
    const sentences = missing.flatMap(({ sentence, model }) => [
      sentence,
      ...waitersFor(context, { question, model }).slice(0, 1).map(tellWaiter),
    ]);
    return [{ ...named, kind: 'planned', startsOn, sentences } as const];
  });
}

function needsOf(kitsJson: string): readonly { readonly model: string; readonly count: number }[] {
  const kits = JSON.parse(kitsJson) as readonly { readonly items: readonly { item: string; count: number }[] }[];
  return kits.flatMap(({ items }) => items.map(({ item, count }) => ({ model: item, count })));
}

function bookedShort(context: Context): readonly Short[] {
  const day = today(context);
  const rows = unitsBookedAhead(context.database.db, day);
  if (rows.length === 0) return [];
  const units = new Map(
    stockQuestion(context, { window: rangeOfDays(day, 1) }).units.map((unit) => [unit.serial, unit]),
  );
  const byBooking = new Map<string, Short>();
  for (const { booking, serial, starts_on, ends_before, ...named } of rows) {
    const unit = units.get(serial);
    const why = unit === undefined ? null : cannotGo({ unit, window: { starts_on, ends_before } });
    if (why === null) continue;
    const entry = byBooking.get(booking) ?? { ...named, kind: 'booked', startsOn: starts_on, sentences: [] };
    byBooking.set(booking, { ...entry, sentences: [...entry.sentences, `${serial} of ${booking} ${why}.`] });
  }
  return [...byBooking.values()];
}

/** Why a booked unit cannot go out over its days; null where it can. */
export function cannotGo({ unit, window }: { readonly unit: Unit; readonly window: DateRange }): string | null {
  if (!isHireable(unit)) return unit.state === 'lost' ? 'is lost' : `stands in ${unit.state}`;
  if (fallsDue({ unit, window })) return 'has an inspection or calibration that falls due before the hire ends';
  return null;
}
