/*
 * Counted pieces: how many lie in which depot, and correcting the number with the reason.
 * Invariant: every change of a number leaves an entry in its history; a model that is not counted is refused.
 * Not here: how many are held over which days (lib/stock).
 * Read next: unit-record.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findShelf, listShelves, saveShelf } from '#db/queries/stock.ts';
import { addCountedEvent, type CountedEventRow, countedEvents } from '#db/queries/unit-events.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { freePieces, houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { knownBay } from './bays.ts';
import { knownDepot } from './unit-record.ts';

export interface CountedModel {
  readonly model: string;
  readonly name: string;
  readonly shelves: readonly { readonly depot: string; readonly bay: string; readonly count: number }[];
  readonly total: number;
  /** Of all depots, for a hire of one day that starts today. */
  readonly freeToday: number;
  readonly history: readonly CountedEventRow[];
}

export interface CountedView {
  readonly models: readonly CountedModel[];
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly mayChange: boolean;
}

export function listCounted(context: Context): Result<CountedView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const depots = houseFacts(context).depots.map(({ code, name }) => ({ code, name }));
  const shelves = listShelves(db);
  const free = freePieces(context, { window: rangeOfDays(today(context), 1) });
  const models = knownModels(context)
    .filter(({ counted, madeToOrder }) => counted && !madeToOrder)
    .map(({ number, name }) => {
      const its = depots.map(({ code }) => {
        const shelf = shelves.find((one) => one.model_number === number && one.depot === code);
        return { depot: code, bay: shelf?.bay ?? '', count: shelf?.count ?? 0 };
      });
      return {
        model: number,
        name,
        shelves: its,
        total: its.reduce((sum, { count }) => sum + count, 0),
        freeToday: free[number] ?? 0,
        history: countedEvents(db, number).slice(0, 20),
      };
    });
  return ok({ models, depots, mayChange: authorise(context, 'change stock').ok });
}

export interface CountToSet {
  readonly model: string;
  readonly depot: string;
  readonly count: number;
  /** Where the box stands; absent leaves it where it is. */
  readonly bay?: string | undefined;
  readonly reason: string;
}

export function setCount(context: Context, input: CountToSet): Result<{ readonly count: number }> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  const depot = knownDepot(context, input.depot);
  if (!depot.ok) return depot;
  const known = countedModel(context, input.model);
  if (!known.ok) return known;
  return context.database.db.transaction(
    (tx) => {
      const before = findShelf(tx, input);
      if (input.count !== (before?.count ?? 0) && input.reason.trim() === '')
        return failed({
          code: 'reason-missing',
          sentence: 'Say why the number changes: bought, used up, counted again.',
        });
      if (input.bay !== undefined && input.bay !== '') {
        const bay = knownBay(tx, { depot: input.depot, bay: input.bay });
        if (!bay.ok) return bay;
      }
      writeCount(tx, { context, ...input });
      return ok({ count: input.count });
    },
    { behavior: 'immediate' },
  );
}

export interface CountWritten extends CountToSet {
  readonly context: Context;
  /** Number of the booking, transfer or stocktake that it belongs to. */
  readonly reference?: string;
}

/** The one place where the number of a shelf changes. */
export function writeCount(tx: DbOrTx, { context, model, depot, count, bay, reason, reference }: CountWritten): void {
  const before = findShelf(tx, { model, depot })?.count ?? 0;
  saveShelf(tx, { model_number: model, depot, count, ...(bay === undefined ? {} : { bay: bay.toUpperCase() }) });
  if (before === count) return;
  const at = timestamp(context);
  addCountedEvent(tx, {
    model_number: model,
    depot,
    at,
    who: context.actor,
    before,
    after: count,
    reason: reason.trim(),
    reference,
  });
  const detail = { depot, before, after: count, reason: reason.trim() };
  logChange(tx, { context, deed: { action: 'pieces counted', subject: `model ${model}`, detail } });
}

export function countedModel(
  context: Context,
  number: string,
): Result<{ readonly number: string; readonly name: string }> {
  const model = knownModels(context).find((one) => one.number === number);
  if (!model)
    return failed({
      code: 'no-such-model',
      sentence: `There is no model ${number.slice(0, 20)}; look it up in the list of equipment.`,
    });
  if (!model.counted)
    return failed({
      code: 'model-has-units',
      sentence: `Every piece of ${number} has a serial number: scan the pieces one by one.`,
    });
  return ok({ number: model.number, name: model.name });
}
