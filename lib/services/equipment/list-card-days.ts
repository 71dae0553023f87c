/*
 * The days on which rate cards begin, with how many models each touches.
 * Invariant: reads only; the newest day comes first.
 * Not here: the cards of one model (open-model.ts).
 * Read next: rate-cards.ts.
 */
import { listRateCards } from '#db/queries/rates.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';

interface CardDays {
  readonly days: readonly {
    readonly starts_on: IsoDate;
    readonly models: number;
    readonly when: 'begun' | 'to come';
    readonly notes: readonly string[];
  }[];
  readonly currency: string;
  readonly mayChange: boolean;
}

export function listCardDays(context: Context): Result<CardDays> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const cards = listRateCards(context.database.db);
  const days = [...new Set(cards.map(({ starts_on }) => starts_on))].sort().reverse();
  return ok({
    days: days.map((starts_on) => {
      const own = cards.filter((card) => card.starts_on === starts_on);
      const notes = [...new Set(own.map(({ note }) => note).filter((note) => note !== ''))];
      return { starts_on, models: own.length, when: starts_on <= today(context) ? 'begun' : 'to come', notes };
    }),
    currency: houseFacts(context).pricing.currency,
    mayChange: authorise(context, 'change equipment').ok,
  });
}
