/*
 * What is free at each depot over a window, and what a despatching depot must have brought from the others.
 * Invariant: what the depots have free adds up to what the house has free; the despatching depot's own pieces go first.
 * Not here: sending them (lib/services/stock).
 * Read next: free-units.ts, transfer-days.ts.
 */
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { freeCount } from './free-units.ts';
import { TRANSFER_DAYS } from './transfer-days.ts';
import type { StockQuestion } from './unit.ts';

/** Pieces by model, at one depot. What is held by bookings that name no depot counts as the despatching one's. */
export function freeAt(at: {
  readonly question: StockQuestion;
  readonly depot: string;
  readonly isDespatching: boolean;
}): ReadonlyMap<string, number> {
  const { question, depot, isDespatching } = at;
  const { units, counted } = question;
  return freeCount({
    ...question,
    units: units.filter((unit) => unit.depot === depot),
    counted: {
      shelves: (counted?.shelves ?? []).filter((shelf) => shelf.depot === depot),
      holds: (counted?.holds ?? []).filter((hold) => hold.depot === depot || (hold.depot === '' && isDespatching)),
    },
  });
}

export interface Bring {
  readonly model: string;
  readonly count: number;
  readonly depot: string;
  /** Day on which it is loaded there, so that it can be used on the first day of hire. */
  readonly sendOn: IsoDate;
}

export interface BringAsked {
  readonly question: StockQuestion;
  readonly needs: ReadonlyMap<string, number>;
  /** The despatching depot first. */
  readonly depots: readonly string[];
}

export function bringFromDepots({ question, needs, depots }: BringAsked): readonly Bring[] {
  const [home = '', ...others] = depots;
  const atHome = freeAt({ question, depot: home, isDespatching: true });
  const elsewhere = others.map((depot) => ({ depot, free: freeAt({ question, depot, isDespatching: false }) }));
  const sendOn = addDays(question.window.starts_on, -TRANSFER_DAYS);
  return [...needs].flatMap(([model, count]) => {
    let missing = count - (atHome.get(model) ?? 0);
    return elsewhere.flatMap(({ depot, free }) => {
      const taken = Math.min(missing, free.get(model) ?? 0);
      if (taken <= 0) return [];
      missing -= taken;
      return [{ model, count: taken, depot, sendOn }];
    });
  });
}
