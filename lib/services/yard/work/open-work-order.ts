/*
 * Opens work orders on a unit: those that a check-in asks for, and one by hand with its reason.
 * Invariant: numbers run without gaps; an order by hand takes the unit out of hire at once.
 * Not here: doing and ending them (step-work-order.ts).
 * Read next: step-work-order.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { takeNumber } from '#db/queries/house.ts';
import { insertOrder } from '#db/queries/work-orders.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import type { WorkKind } from '#lib/stock/work-order.ts';
import { moveUnit, unitWith } from '../unit-places.ts';

interface NewOrder {
  readonly context: Context;
  readonly serial: string;
  readonly kind: WorkKind;
  readonly reason: string;
  readonly pieceId: number | null;
}

/** Answers the number of the order. */
export function addWorkOrder(tx: DbOrTx, { context, serial, kind, reason, pieceId }: NewOrder): string {
  const number = `W-${String(takeNumber(tx, 'work order')).padStart(5, '0')}`;
  insertOrder(tx, {
    number,
    unit_serial: serial,
    kind,
    reason,
    piece_id: pieceId,
    opened_at: timestamp(context),
    opened_by: context.actor.name,
  });
  return number;
}

export interface OrderByHand {
  /** What was scanned or typed. */
  readonly scan: string;
  readonly kind: WorkKind;
  readonly reason: string;
}

export function openWorkOrder(context: Context, order: OrderByHand): Result<{ readonly number: string }> {
  const allowed = authorise(context, 'do work orders');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => open(tx, { context, order }), { behavior: 'immediate' });
}

interface Opening {
  readonly context: Context;
  readonly order: OrderByHand;
}

function open(tx: DbOrTx, { context, order }: Opening): Result<{ readonly number: string }> {
  const read = readScan(order.scan);
  if (read.kind !== 'unit')
    return failed({
      code: 'scan-not-a-unit',
      sentence: read.kind === 'unknown' ? read.sentence : 'Scan the label of the unit that needs work.',
    });
  const unit = unitWith(tx, read.serial);
  if (!unit.ok) return unit;
  const { state } = unit.value;
  if (state === 'out' || state === 'lost' || state === 'retired')
    return failed({
      code: 'unit-not-here',
      sentence: `${read.serial} is ${state}: work is done on what stands in the yard.`,
    });
  const reason = order.reason.trim();
  if (reason === '') return failed({ code: 'reason-missing', sentence: 'Say what is to be done, and why.' });
  const number = addWorkOrder(tx, { context, serial: read.serial, kind: order.kind, reason, pieceId: null });
  const held = order.kind === 'cleaning' ? state : 'quarantine';
  moveUnit(tx, {
    context,
    unit: unit.value,
    set: { state: held },
    kind: 'state',
    before: state,
    after: held,
    reason,
    reference: number,
  });
  const detail = { order: number, kind: order.kind, reason };
  logChange(tx, { context, deed: { action: 'work order opened', subject: `unit ${read.serial}`, detail } });
  return ok({ number });
}
