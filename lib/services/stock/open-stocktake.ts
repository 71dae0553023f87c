/*
 * Opens a stocktake of a depot or of one bay, gives it up, and shows how far it is.
 * Invariant: opening and giving up change no unit; a depot has one open stocktake.
 * Not here: scanning (scan-stocktake.ts), closing (close-stocktake.ts).
 * Read next: scan-stocktake.ts, ../../stock/stocktake.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { listUnits } from '#db/queries/equipment.ts';
import { takeNumber } from '#db/queries/house.ts';
import { listShelves } from '#db/queries/stock.ts';
import {
  changeStocktake,
  countsOf,
  findStocktake,
  insertStocktake,
  listStocktakes,
  openStocktakeOf,
  type StocktakeRow,
  scansOf,
} from '#db/queries/stocktakes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { type StocktakeFindings, stocktakeFindings } from '#lib/stock/stocktake.ts';
import { knownBay } from './bays.ts';
import { knownDepot } from './unit-record.ts';

export interface StocktakeScopeAsked {
  readonly depot: string;
  /** Empty counts the whole depot. */
  readonly bay: string;
}

export function openStocktake(context: Context, scope: StocktakeScopeAsked): Result<{ readonly number: string }> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  const depot = knownDepot(context, scope.depot);
  if (!depot.ok) return depot;
  return context.database.db.transaction(
    (tx) => {
      const bay = scope.bay.trim().toUpperCase();
      const known = bay === '' ? ok(true as const) : knownBay(tx, { depot: scope.depot, bay });
      if (!known.ok) return known;
      const open = openStocktakeOf(tx, scope.depot);
      if (open)
        return failed({
          code: 'stocktake-open',
          sentence: `Stocktake ${open.number} of ${scope.depot} is still open: go on with it, or close it first.`,
        });
      const number = `ST-${String(takeNumber(tx, 'stocktake')).padStart(4, '0')}`;
      const { id, name } = context.actor;
      const at = timestamp(context);
      insertStocktake(tx, {
        number,
        depot: scope.depot,
        bay,
        state: 'open',
        opened_at: at,
        opened_by_id: id,
        opened_by: name,
      });
      const deed = { action: 'stocktake opened', subject: `stocktake ${number}`, detail: { depot: scope.depot, bay } };
      logChange(tx, { context, deed });
      return ok({ number });
    },
    { behavior: 'immediate' },
  );
}

export function giveUpStocktake(context: Context, number: string): Result<true> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx) => {
      const found = openStocktakeNumbered(tx, number);
      if (!found.ok) return found;
      const by = { closed_at: timestamp(context), closed_by_id: context.actor.id, closed_by: context.actor.name };
      changeStocktake(tx, { id: found.value.id, set: { state: 'given up', ...by } });
      logChange(tx, { context, deed: { action: 'stocktake given up', subject: `stocktake ${number}` } });
      return ok(true);
    },
    { behavior: 'immediate' },
  );
}

/** Only an open stocktake is scanned into or closed. */
export function openStocktakeNumbered(tx: DbOrTx, number: string): Result<StocktakeRow> {
  const row = findStocktake(tx, number);
  if (!row)
    return failed({
      code: 'no-such-stocktake',
      sentence: `There is no stocktake ${number.slice(0, 20)}; look for it in the list of stocktakes.`,
    });
  if (row.state !== 'open')
    return failed({
      code: 'stocktake-ended',
      sentence: `Stocktake ${number} is ${row.state}: open a new one to count again.`,
    });
  return ok(row);
}

export interface CountedExpected {
  readonly model: string;
  readonly name: string;
  readonly bay: string;
  /** On record. */
  readonly expected: number;
  /** Null where nobody has counted yet. */
  readonly counted: number | null;
}

export interface StocktakeView {
  readonly stocktake: StocktakeRow;
  readonly names: Readonly<Record<string, string>>;
  readonly scanned: readonly { readonly serial: string; readonly bay: string; readonly who: string }[];
  readonly findings: StocktakeFindings;
  readonly counted: readonly CountedExpected[];
  readonly mayChange: boolean;
}

export function viewStocktake(context: Context, number: string): Result<StocktakeView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const row = findStocktake(db, number);
  if (!row)
    return failed({
      code: 'no-such-stocktake',
      sentence: `There is no stocktake ${number.slice(0, 20)}; look for it in the list of stocktakes.`,
    });
  const { findings, counted } = standingOf(db, { context, row });
  const shown = [...findings.inPlace, ...findings.misplaced, ...findings.unexpected, ...findings.missing];
  const names = new Map(knownModels(context).map((model) => [model.number, model.name]));
  return ok({
    stocktake: row,
    names: Object.fromEntries(shown.map(({ model }) => [model, names.get(model) ?? ''])),
    scanned: scansOf(db, row.id).map(({ unit_serial, bay, who }) => ({ serial: unit_serial, bay, who })),
    findings,
    counted,
    mayChange: authorise(context, 'change stock').ok,
  });
}

interface Standing {
  readonly context: Context;
  readonly row: StocktakeRow;
}

/** What the scans say against the record as it is now. */
export function standingOf(
  db: DbOrTx,
  { context, row }: Standing,
): { readonly findings: StocktakeFindings; readonly counted: readonly CountedExpected[] } {
  const findings = stocktakeFindings({
    scope: { depot: row.depot, bay: row.bay },
    units: listUnits(db).map((unit) => ({
      serial: unit.serial,
      model: unit.model_number,
      depot: unit.depot,
      bay: unit.bay,
      state: unit.state,
      inspectionDueOn: unit.inspection_due_on,
      calibrationDueOn: unit.calibration_due_on,
    })),
    scans: scansOf(db, row.id).map(({ unit_serial, bay }) => ({ serial: unit_serial, bay })),
  });
  return { findings, counted: countedOf(db, { context, row }) };
}

/** In a bay only what has its box there, and whatever was counted besides. */
function countedOf(db: DbOrTx, { context, row }: Standing): readonly CountedExpected[] {
  const shelves = new Map(
    listShelves(db)
      .filter(({ depot }) => depot === row.depot)
      .map((shelf) => [shelf.model_number, shelf]),
  );
  const counts = new Map(countsOf(db, row.id).map(({ model_number, count }) => [model_number, count]));
  return knownModels(context)
    .filter((model) => model.counted && !model.madeToOrder)
    .filter(({ number }) => row.bay === '' || shelves.get(number)?.bay === row.bay || counts.has(number))
    .map(({ number, name }) => ({
      model: number,
      name,
      bay: shelves.get(number)?.bay ?? '',
      expected: shelves.get(number)?.count ?? 0,
      counted: counts.get(number) ?? null,
    }));
}

export interface StocktakesView {
  readonly rows: readonly StocktakeRow[];
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly mayChange: boolean;
}

export function listHouseStocktakes(context: Context): Result<StocktakesView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  return ok({
    rows: listStocktakes(context.database.db),
    depots: houseFacts(context).depots.map(({ code, name }) => ({ code, name })),
    mayChange: authorise(context, 'change stock').ok,
  });
}
