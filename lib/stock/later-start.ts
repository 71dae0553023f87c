/*
 * The first later start of a hire for which nothing has to leave another depot before today, and all of it is free.
 * Invariant: on the start that is named every piece asked for is free for the whole hire, and no day of sending has passed.
 * Not here: who could wait (shortage-ways.ts), and what the hire costs then (services).
 * Read next: by-depot.ts, transfer-days.ts.
 */
import { addDays, daysBetween, type IsoDate, rangeOfDays } from '#lib/kernel/date-range.ts';
import { type Bring, type BringAsked, bringFromDepots } from './by-depot.ts';
import { busyDays, freeCount } from './free-units.ts';
import { TRANSFER_DAYS } from './transfer-days.ts';
import type { StockQuestion } from './unit.ts';

/** Nobody waits longer than a year for a piece. */
const LOOK_AHEAD_DAYS = 366;

export interface LaterStart {
  readonly startsOn: IsoDate;
  /** What other depots send then. */
  readonly bring: readonly Bring[];
}

export function laterStart(at: BringAsked & { readonly today: IsoDate }): LaterStart | null {
  const { question, depots, today } = at;
  const needs = inStock(at);
  for (const startsOn of startsWorthTrying({ question, today })) {
    const moved = { ...question, window: rangeOfDays(startsOn, daysBetween(question.window)) };
    const free = freeCount(moved);
    if (![...needs].every(([model, count]) => (free.get(model) ?? 0) >= count)) continue;
    const bring = bringFromDepots({ question: moved, needs, depots });
    if (bring.every(({ sendOn }) => sendOn >= today)) return { startsOn, bring };
  }
  return null;
}

/** What the house keeps; what is made or bought for a hire hangs on no stock. */
function inStock({ question, needs }: BringAsked): ReadonlyMap<string, number> {
  const kept = new Set([
    ...question.units.map(({ model }) => model),
    ...(question.counted?.shelves ?? []).map(({ model }) => model),
  ]);
  return new Map([...needs].filter(([model]) => kept.has(model)));
}

/** As soon as can be, as soon as another depot can send, and whenever something is back: on no other day is more free than before. */
function startsWorthTrying({
  question,
  today,
}: {
  readonly question: StockQuestion;
  readonly today: IsoDate;
}): readonly IsoDate[] {
  const { window, bookings, turnaroundDays, counted } = question;
  const next = addDays(window.starts_on, 1);
  const first = next > today ? next : today;
  const last = addDays(window.starts_on, LOOK_AHEAD_DAYS);
  const backs = [
    ...bookings.map((booking) => busyDays({ booking, turnaroundDays }).ends_before),
    ...(counted?.holds ?? []).map(({ days }) => days.ends_before),
  ];
  const starts = [first, addDays(today, TRANSFER_DAYS), ...backs];
  return [...new Set(starts)].filter((start) => start >= first && start <= last).sort();
}
