/*
 * Dated rate cards of models: put one on, take a coming one off, or raise all of a role from a day.
 * Invariant: a card begins today or later; a card that has begun stays, so that what was priced with it can be told.
 * Not here: which card a price takes (house-facts.ts) and files of cards (rates-csv.ts).
 * Read next: ../../equipment/rate-on.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findModel } from '#db/queries/equipment.ts';
import { putRateCard, rateCardsOf, removeRateCard } from '#db/queries/rates.ts';
import { type IsoDate, isIsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { keepChange } from '#lib/services/keep-change.ts';
import { NO_SUCH_MODEL } from './model-record.ts';

export interface RateCardInput {
  readonly number: string;
  readonly starts_on: IsoDate;
  readonly day_minor: number;
  readonly week_minor: number;
  readonly four_weeks_minor: number;
  readonly minimum_days: number;
  readonly note: string;
}

/** All of them or none. */
export function putRateCards(
  context: Context,
  { cards, action }: { readonly cards: readonly RateCardInput[]; readonly action: string },
): Result<{ readonly put: number }> {
  const allowed = authorise(context, 'change equipment');
  if (!allowed.ok) return allowed;
  for (const card of cards) {
    const wrong = wrongDay(context, card.starts_on);
    if (wrong !== null) return failed(wrong);
    if (findModel(context.database.db, card.number) === undefined) return NO_SUCH_MODEL(card.number);
  }
  context.database.db.transaction(
    (tx) => {
      for (const { number, ...card } of cards) {
        changed(tx, context, { number, action, make: () => putRateCard(tx, { model_number: number, ...card }) });
      }
    },
    { behavior: 'immediate' },
  );
  return ok({ put: cards.length });
}

export function takeOffRateCard(
  context: Context,
  card: { readonly number: string; readonly startsOn: IsoDate },
): Result<{ readonly taken: true }> {
  const allowed = authorise(context, 'change equipment');
  if (!allowed.ok) return allowed;
  const there = rateCardsOf(context.database.db, card.number).some(({ starts_on }) => starts_on === card.startsOn);
  if (!there)
    return failed({
      code: 'no-such-rate-card',
      sentence: `${card.number} has no card that begins on ${card.startsOn}; somebody may have taken it off.`,
    });
  if (card.startsOn <= today(context))
    return failed({
      code: 'rate-card-begun',
      sentence: 'That card has begun and stays, because prices were made with it. Put a new card on instead.',
    });
  context.database.db.transaction(
    (tx) =>
      changed(tx, context, {
        number: card.number,
        action: 'rate card taken off',
        make: () => removeRateCard(tx, { modelNumber: card.number, startsOn: card.startsOn }),
      }),
    { behavior: 'immediate' },
  );
  return ok({ taken: true });
}

/** What is wrong with the day on which a card or price list shall begin. */
export function wrongDay(context: Context, day: string) {
  if (!isIsoDate(day))
    return {
      code: 'rate-day-unreadable',
      sentence: `“${day}” is no date: write it as YYYY-MM-DD, for example ${today(context)}.`,
    };
  if (day < today(context))
    return {
      code: 'rate-day-past',
      sentence: `${day} is past, and quotes were priced since: let it begin today, ${today(context)}, or later.`,
    };
  return null;
}

interface CardChange {
  readonly number: string;
  readonly action: string;
  readonly make: () => void;
}

function changed(tx: DbOrTx, context: Context, { number, action, make }: CardChange): void {
  const before = rateCardsOf(tx, number);
  make();
  const after = rateCardsOf(tx, number);
  const byDay = (rows: typeof before) =>
    Object.fromEntries(rows.map(({ id: _id, model_number: _model, starts_on, ...card }) => [starts_on, card]));
  keepChange(tx, context, {
    subject: `rates ${number}`,
    version: after.length,
    action,
    before: byDay(before),
    after: byDay(after),
  });
}
