/*
 * Takes a transfer in: what arrived goes into its bay, what did not stays on the way or is written off with the reason.
 * Invariant: a transfer has arrived once nothing of it is on the way; what arrived is free at the new depot at once.
 * Not here: sending (send-transfer.ts).
 * Read next: send-transfer.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findShelf, findUnit } from '#db/queries/stock.ts';
import {
  changeTransfer,
  endTransferItem,
  endTransferUnit,
  findTransfer,
  itemsOfTransfer,
  type TransferItemRow,
  type TransferRow,
  type TransferUnitRow,
  unitsOfTransfer,
} from '#db/queries/transfers.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { knownBay } from './bays.ts';
import { writeCount } from './counted.ts';
import { recordUnit } from './unit-record.ts';

export interface TransferArrival {
  readonly number: string;
  readonly units: readonly { readonly serial: string; readonly bay: string }[];
  /** How many of each counted model arrived; those that are missing are written off. */
  readonly items: readonly { readonly model: string; readonly arrived: number }[];
  /** Units that never arrived and are given up, with the reason. */
  readonly lost: readonly { readonly serial: string; readonly reason: string }[];
}

export interface TransferArrived {
  readonly state: 'on the way' | 'arrived';
  /** What is still on its way. */
  readonly left: readonly string[];
}

export function arriveTransfer(context: Context, arrival: TransferArrival): Result<TransferArrived> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => arrive(tx, { context, arrival }), { behavior: 'immediate' });
}

interface Arriving {
  readonly context: Context;
  readonly arrival: TransferArrival;
}

function arrive(tx: DbOrTx, { context, arrival }: Arriving): Result<TransferArrived> {
  const transfer = findTransfer(tx, arrival.number);
  if (!transfer)
    return failed({
      code: 'no-such-transfer',
      sentence: `There is no transfer ${arrival.number.slice(0, 20)}; look for it in the list of transfers.`,
    });
  const units = unitsOfTransfer(tx, transfer.id).filter(({ active }) => active);
  const items = itemsOfTransfer(tx, transfer.id).filter(({ arrived }) => arrived === null);
  const wrong = wrongArrival(tx, { arrival, transfer, units, items });
  if (!wrong.ok) return wrong;
  for (const { serial, bay } of arrival.units)
    takeIn(tx, { context, transfer, row: rowOf(units, serial), bay: bay.trim().toUpperCase() });
  for (const { serial, reason } of arrival.lost)
    writeOff(tx, { context, transfer, row: rowOf(units, serial), reason: reason.trim() });
  for (const { model, arrived } of arrival.items) shelve(tx, { context, transfer, model, arrived });
  const left = [
    ...unitsOfTransfer(tx, transfer.id).flatMap(({ active, unit_serial }) => (active ? [unit_serial] : [])),
    ...itemsOfTransfer(tx, transfer.id).flatMap(({ arrived, model_number }) =>
      arrived === null ? [model_number] : [],
    ),
  ];
  if (left.length === 0) {
    const by = { arrived_by_id: context.actor.id, arrived_by: context.actor.name };
    changeTransfer(tx, { id: transfer.id, set: { state: 'arrived', arrived_on: today(context), ...by } });
  }
  const deed = { action: 'transfer taken in', subject: `transfer ${transfer.number}`, detail: { ...arrival, left } };
  logChange(tx, { context, deed });
  return ok({ state: left.length === 0 ? 'arrived' : 'on the way', left });
}

interface Judged {
  readonly arrival: TransferArrival;
  readonly transfer: TransferRow;
  readonly units: readonly TransferUnitRow[];
  readonly items: readonly TransferItemRow[];
}

function wrongArrival(tx: DbOrTx, { arrival, transfer, units, items }: Judged): Result<true> {
  const on = new Set(units.map(({ unit_serial }) => unit_serial));
  const serials = [...arrival.units, ...arrival.lost].map(({ serial }) => serial);
  const other = serials.find((serial) => !on.has(serial));
  if (other !== undefined || new Set(serials).size < serials.length)
    return failed({
      code: 'not-on-transfer',
      sentence: `${(other ?? 'A unit twice').slice(0, 40)} is not on its way with ${transfer.number}: look at its list again.`,
    });
  for (const { bay } of arrival.units) {
    const known = knownBay(tx, { depot: transfer.to_depot, bay: bay.trim() });
    if (!known.ok) return known;
  }
  const silent = arrival.lost.find(({ reason }) => reason.trim() === '');
  if (silent) return failed({ code: 'reason-missing', sentence: `Say why ${silent.serial} is given up as lost.` });
  const counts = new Map(items.map(({ model_number, count }) => [model_number, count]));
  const much = arrival.items.find(({ model, arrived }) => arrived > (counts.get(model) ?? -1));
  if (much)
    return failed({
      code: 'more-than-sent',
      sentence: `${counts.get(much.model) ?? 0} of ${much.model.slice(0, 20)} are on the way with ${transfer.number}, so ${much.arrived} cannot have arrived.`,
    });
  return ok(true);
}

function rowOf(units: readonly TransferUnitRow[], serial: string): TransferUnitRow {
  const row = units.find(({ unit_serial }) => unit_serial === serial);
  invariant(row, `${serial} was judged to be on the transfer.`);
  return row;
}

interface UnitArrival {
  readonly context: Context;
  readonly transfer: TransferRow;
  readonly row: TransferUnitRow;
}

function takeIn(tx: DbOrTx, { context, transfer, row, bay }: UnitArrival & { readonly bay: string }): void {
  endTransferUnit(tx, row.id);
  const state = findUnit(tx, row.unit_serial)?.state;
  const event = {
    kind: 'arrived',
    before: transfer.from_depot,
    after: `${transfer.to_depot} ${bay}`,
    reference: transfer.number,
  } as const;
  const set = { bay, ...(state === 'on the way' ? { state: 'ready' } : {}) };
  recordUnit(tx, { context, deed: { serial: row.unit_serial, set, event } });
}

function writeOff(tx: DbOrTx, { context, transfer, row, reason }: UnitArrival & { readonly reason: string }): void {
  endTransferUnit(tx, row.id);
  const event = { kind: 'missing', before: 'on the way', after: 'lost', reason, reference: transfer.number } as const;
  recordUnit(tx, { context, deed: { serial: row.unit_serial, set: { state: 'lost' }, event } });
}

interface Shelving {
  readonly context: Context;
  readonly transfer: TransferRow;
  readonly model: string;
  readonly arrived: number;
}

function shelve(tx: DbOrTx, { context, transfer, model, arrived }: Shelving): void {
  endTransferItem(tx, { id: transfer.id, model, arrived });
  const { to_depot: depot, number } = transfer;
  const count = (findShelf(tx, { model, depot })?.count ?? 0) + arrived;
  writeCount(tx, { context, model, depot, count, reason: `arrived from ${transfer.from_depot}`, reference: number });
}
