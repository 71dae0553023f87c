/*
 * Takes one scan of a stocktake: a bay one has come to, a unit found there, or a box of counted pieces; and takes one back.
 * Invariant: a scan is kept at once, so that nothing is lost when the work is interrupted; no unit changes before the stocktake is closed.
 * Not here: closing it (close-stocktake.ts).
 * Read next: ../../stock/scan-code.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findUnit } from '#db/queries/stock.ts';
import { removeScan, type StocktakeRow, saveCountOf, saveScan } from '#db/queries/stocktakes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';
import { readScan, type UnitScan } from '#lib/stock/scan-code.ts';
import { knownBay } from './bays.ts';
import { countedModel } from './counted.ts';
import { openStocktakeNumbered } from './open-stocktake.ts';
import { noSuchUnit } from './unit-record.ts';

export interface StocktakeScan {
  readonly number: string;
  /** As it was scanned or typed. */
  readonly code: string;
  /** The bay one stands at; empty before any was scanned. */
  readonly bay: string;
}

export type ScanAnswer =
  | { readonly kind: 'bay'; readonly bay: string; readonly sentence: string }
  | { readonly kind: 'count'; readonly model: string; readonly name: string; readonly sentence: string }
  | { readonly kind: 'unit'; readonly serial: string; readonly tone: 'good' | 'warning'; readonly sentence: string };

export function scanStocktake(context: Context, scan: StocktakeScan): Result<ScanAnswer> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => take(tx, { context, scan }), { behavior: 'immediate' });
}

interface Taking {
  readonly context: Context;
  readonly scan: StocktakeScan;
}

function take(tx: DbOrTx, { context, scan }: Taking): Result<ScanAnswer> {
  const open = openStocktakeNumbered(tx, scan.number);
  if (!open.ok) return open;
  const read = readScan(scan.code);
  switch (read.kind) {
    case 'bay':
      return arriveAt(tx, { row: open.value, depot: read.depot, bay: read.bay });
    case 'model':
      return askCount(context, read.model);
    case 'unit': {
      // A finger types the number of a counted model without the word before it.
      const typed = knownModels(context).find(({ number, counted }) => counted && number === read.serial);
      return typed ? askCount(context, typed.number) : findHere(tx, { context, scan, row: open.value, read });
    }
    case 'case':
    case 'booking':
      return failed({
        code: 'scan-not-here',
        sentence: 'That is the label of a case or a booking: scan units and bays here.',
      });
    case 'unknown':
      return failed({ code: 'scan-unreadable', sentence: read.sentence });
  }
}

interface Arriving {
  readonly row: StocktakeRow;
  readonly depot: string;
  readonly bay: string;
}

function arriveAt(tx: DbOrTx, { row, depot, bay }: Arriving): Result<ScanAnswer> {
  const at = `${depot} ${bay}`;
  if (depot !== row.depot || (row.bay !== '' && bay !== row.bay)) {
    return failed({
      code: 'bay-outside',
      sentence: `${at} is no part of this stocktake, which counts ${row.depot}${row.bay === '' ? '' : ` ${row.bay}`}.`,
    });
  }
  const known = knownBay(tx, { depot, bay });
  if (!known.ok) return known;
  return ok({ kind: 'bay', bay, sentence: `You are at ${at}: scan what stands here.` });
}

function askCount(context: Context, number: string): Result<ScanAnswer> {
  const model = countedModel(context, number);
  if (!model.ok) return model;
  const { name } = model.value;
  return ok({ kind: 'count', model: number, name, sentence: `Count ${name} (${number}) and type how many there are.` });
}

interface Finding extends Taking {
  readonly row: StocktakeRow;
  readonly read: UnitScan;
}

function findHere(tx: DbOrTx, { context, scan, row, read }: Finding): Result<ScanAnswer> {
  const bay = row.bay === '' ? scan.bay.trim().toUpperCase() : row.bay;
  if (bay === '')
    return failed({ code: 'bay-first', sentence: 'Scan the label of the bay first, then what stands in it.' });
  const known = knownBay(tx, { depot: row.depot, bay });
  if (!known.ok) return known;
  const unit = findUnit(tx, read.serial);
  if (!unit) return noSuchUnit(read.serial);
  const { id, name } = context.actor;
  saveScan(tx, { stocktake_id: row.id, unit_serial: unit.serial, bay, at: timestamp(context), who_id: id, who: name });
  const { serial } = unit;
  if (['out', 'on the way', 'lost', 'retired'].includes(unit.state))
    return ok({
      kind: 'unit',
      serial,
      tone: 'warning',
      sentence: `${serial} is ${unit.state} on record. Keep it apart.`,
    });
  if (unit.depot !== row.depot || unit.bay !== bay)
    return ok({
      kind: 'unit',
      serial,
      tone: 'warning',
      sentence: `${serial} belongs in ${unit.depot} ${unit.bay}. It is moved here when you close.`,
    });
  return ok({ kind: 'unit', serial, tone: 'good', sentence: `${serial} is in its place.` });
}

export interface StocktakeCount {
  readonly number: string;
  readonly model: string;
  readonly count: number;
}

export function countStocktake(context: Context, { number, model, count }: StocktakeCount): Result<true> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  const known = countedModel(context, model);
  if (!known.ok) return known;
  return context.database.db.transaction(
    (tx) => {
      const open = openStocktakeNumbered(tx, number);
      if (!open.ok) return open;
      const { id, name } = context.actor;
      saveCountOf(tx, {
        stocktake_id: open.value.id,
        model_number: model,
        count,
        at: timestamp(context),
        who_id: id,
        who: name,
      });
      return ok(true);
    },
    { behavior: 'immediate' },
  );
}

/** Takes a scan back that was a slip. */
export function unscanStocktake(
  context: Context,
  { number, serial }: { readonly number: string; readonly serial: string },
): Result<true> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx) => {
      const open = openStocktakeNumbered(tx, number);
      if (!open.ok) return open;
      if (removeScan(tx, { id: open.value.id, serial })) return ok(true);
      return failed({ code: 'not-scanned', sentence: `${serial.slice(0, 40)} was not scanned in this stocktake.` });
    },
    { behavior: 'immediate' },
  );
}
