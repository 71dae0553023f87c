/*
 * Raises the rates of all models of a role, or of all, by some per cent from a day: first shown, then taken as shown.
 * Invariant: every model gets one card that begins on that day, made from the card that holds then; retired ones are left alone.
 * Not here: rounding (lib/pricing/raise-rates.ts).
 * Read next: rate-cards.ts.
 */
import type { Role } from '#lib/equipment/model.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { raiseRate } from '#lib/pricing/raise-rates.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseModels } from '#lib/services/house/house-facts.ts';
import { putRateCards, type RateCardInput, wrongDay } from './rate-cards.ts';

export interface RaiseAsked {
  /** Absent means every role. */
  readonly role?: Role;
  readonly percent: number;
  readonly step_minor: number;
  readonly starts_on: IsoDate;
}

interface Rates {
  readonly day_minor: number;
  readonly week_minor: number;
  readonly four_weeks_minor: number;
}

export interface RaisedModel {
  readonly number: string;
  readonly name: string;
  readonly before: Rates;
  readonly after: Rates;
}

export function previewRaise(context: Context, asked: RaiseAsked): Result<readonly RaisedModel[]> {
  const allowed = authorise(context, 'change equipment');
  if (!allowed.ok) return allowed;
  const wrong = wrongDay(context, asked.starts_on);
  if (wrong !== null) return failed(wrong);
  const raised = houseModels(context, asked.starts_on)
    .filter((model) => asked.role === undefined || model.role === asked.role)
    .map(({ number, name, rates }) => ({
      number,
      name,
      before: rates,
      after: {
        day_minor: raiseRate(rates.day_minor, asked),
        week_minor: raiseRate(rates.week_minor, asked),
        four_weeks_minor: raiseRate(rates.four_weeks_minor, asked),
      },
    }));
  return ok(raised);
}

export function takeRaise(context: Context, asked: RaiseAsked): Result<{ readonly put: number }> {
  const raised = previewRaise(context, asked);
  if (!raised.ok) return raised;
  const minimum = new Map(
    houseModels(context, asked.starts_on).map(({ number, rates }) => [number, rates.minimum_days]),
  );
  const sign = asked.percent >= 0 ? '+' : '−';
  const note = `${sign}${Math.abs(asked.percent)} %`;
  const cards = raised.value.map(
    ({ number, after }): RateCardInput => ({
      number,
      starts_on: asked.starts_on,
      ...after,
      minimum_days: minimum.get(number) ?? 1,
      note,
    }),
  );
  return putRateCards(context, { cards, action: `rates raised by ${note}` });
}
