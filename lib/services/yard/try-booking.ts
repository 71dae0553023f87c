/*
 * What booking some equipment would meet: of each model how many are free, what must be brought, and what the house can do where it is short.
 * Invariant: reads only; asks the same question as booking does.
 * Not here: booking it (book-equipment.ts); judging that another model fits, which needs the valves (../stock/shortage-answer.ts).
 * Read next: ../../stock/shortage-ways.ts, ../../stock/by-depot.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, houseModels, stockQuestion } from '#lib/services/house/house-facts.ts';
import { type ShortModel, waitersFor } from '#lib/services/stock/shortage-answer.ts';
import { bringFromDepots } from '#lib/stock/by-depot.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import { findShortages } from '#lib/stock/shortage.ts';
import type { StockQuestion } from '#lib/stock/unit.ts';
import { type EquipmentWanted, wantedWell } from './equipment-asked.ts';

export interface TriedModel {
  readonly model: string;
  readonly name: string;
  readonly asked: number;
  readonly free: number;
  /** From other depots, and whether the day to load it there is still to come. */
  readonly bring: readonly {
    readonly depot: string;
    readonly count: number;
    readonly sendOn: IsoDate;
    readonly isInTime: boolean;
  }[];
  /** Why it is short and when it would not be; empty where it is not. */
  readonly short: string;
  readonly waiters: ShortModel['waiters'];
  /** Others of its kind that are free; whether one fits hangs on what it is for. */
  readonly alike: readonly { readonly model: string; readonly name: string; readonly free: number }[];
}

export interface BookingTried {
  readonly startsOn: IsoDate;
  readonly endsBefore: IsoDate;
  /** First day on which the pieces can go out again. */
  readonly freeAgainOn: IsoDate;
  readonly models: readonly TriedModel[];
  readonly isFree: boolean;
}

/** Nobody reads a longer list. */
const ALIKE_TOLD = 5;

export function tryBooking(context: Context, wanted: EquipmentWanted): Result<BookingTried> {
  const allowed = authorise(context, 'book equipment');
  if (!allowed.ok) return allowed;
  const sane = wantedWell(context, wanted);
  if (!sane.ok) return sane;
  const { window, depot } = sane.value;
  const question = stockQuestion(context, { window });
  const needs = new Map<string, number>();
  for (const { model, count } of wanted.needs) needs.set(model, (needs.get(model) ?? 0) + count);
  const trying = { context, question, needs, depot, models: houseModels(context) };
  const models = triedModels(trying);
  return ok({
    startsOn: window.starts_on,
    endsBefore: window.ends_before,
    freeAgainOn: addDays(window.ends_before, question.turnaroundDays),
    models,
    isFree: models.every(({ short }) => short === ''),
  });
}

interface Trying {
  readonly context: Context;
  readonly question: StockQuestion;
  readonly needs: ReadonlyMap<string, number>;
  readonly depot: string;
  readonly models: readonly Model[];
}

function triedModels(trying: Trying): readonly TriedModel[] {
  const { context, question, needs, models } = trying;
  const free = freeCount(question);
  const short = findShortages({ ...question, needs: [...needs].map(([model, count]) => ({ model, count })) });
  const bring = bringOf(trying);
  return [...needs].map(([number, asked]): TriedModel => {
    const shortage = short.find(({ model }) => model === number);
    return {
      model: number,
      name: models.find((model) => model.number === number)?.name ?? '',
      asked,
      free: free.get(number) ?? 0,
      bring: bring.filter(({ model }) => model === number),
      short: shortage?.sentence ?? '',
      waiters: shortage === undefined ? [] : waitersFor(context, { question, model: number }),
      alike: shortage === undefined ? [] : alikeTo({ models, number, free, missing: shortage.missing }),
    };
  });
}

function bringOf({ context, question, needs, depot }: Trying) {
  const { depots } = houseFacts(context);
  const codes = [depot, ...depots.map(({ code }) => code).filter((code) => code !== depot)];
  return bringFromDepots({ question, needs, depots: codes }).map((one) => ({
    ...one,
    depot: depots.find(({ code }) => code === one.depot)?.name ?? one.depot,
    isInTime: one.sendOn >= today(context),
  }));
}

interface Alike {
  readonly models: readonly Model[];
  readonly number: string;
  readonly free: ReadonlyMap<string, number>;
  readonly missing: number;
}

/** Those with most pieces free first. */
function alikeTo({ models, number, free, missing }: Alike): TriedModel['alike'] {
  const role = models.find((model) => model.number === number)?.role;
  return models
    .filter((model) => model.role === role && model.number !== number && !model.madeToOrder)
    .map((model) => ({ model: model.number, name: model.name, free: free.get(model.number) ?? 0 }))
    .filter((one) => one.free >= missing)
    .toSorted((a, b) => b.free - a.free || (a.model < b.model ? -1 : 1))
    .slice(0, ALIKE_TOLD);
}
