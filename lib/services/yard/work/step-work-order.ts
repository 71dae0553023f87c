/*
 * Begins and ends a work order; its result makes the unit ready again, keeps it for a repair, or retires it.
 * Invariant: the unit is ready only when no order on it is open; an inspection or calibration that ends names the day of the next.
 * Not here: which step is allowed (lib/stock/work-order.ts).
 * Read next: open-work-order.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { UnitRow } from '#db/queries/equipment.ts';
import { changeOrder, findOrder, unendedOrders, type WorkOrderRow } from '#db/queries/work-orders.ts';
import { type IsoDate, isIsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import {
  asksDueDate,
  decideWorkStep,
  unitAfterWork,
  WORK_KINDS,
  WORK_STATES,
  type WorkKind,
  type WorkResult,
  type WorkState,
} from '#lib/stock/work-order.ts';
import { moveUnit, unitWith } from '../unit-places.ts';
import { addWorkOrder } from './open-work-order.ts';

export function beginWork(context: Context, number: string): Result<{ readonly state: WorkState }> {
  const allowed = authorise(context, 'do work orders');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx) => {
      const order = orderThatMay(tx, { number, to: 'doing' });
      if (!order.ok) return order;
      changeOrder(tx, {
        id: order.value.id,
        set: { state: 'doing', begun_at: timestamp(context), begun_by: context.actor.name },
      });
      const subject = `unit ${order.value.unit_serial}`;
      logChange(tx, { context, deed: { action: 'work begun', subject, detail: { order: number } } });
      return ok({ state: 'doing' });
    },
    { behavior: 'immediate' },
  );
}

export interface WorkEnd {
  readonly number: string;
  readonly result: WorkResult;
  /** What was found and done. */
  readonly done: string;
  readonly hours: number;
  readonly partsMinor: number;
  /** When the next inspection or calibration falls due, where that is what was done. */
  readonly dueOn: IsoDate | null;
}

export interface WorkEnded {
  readonly unitState: ReturnType<typeof unitAfterWork>;
  /** The repair that was opened because the result asks for one; null where none is. */
  readonly repair: string | null;
}

export function endWork(context: Context, end: WorkEnd): Result<WorkEnded> {
  const allowed = authorise(context, 'do work orders');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => finish(tx, { context, end }), { behavior: 'immediate' });
}

interface Ending {
  readonly context: Context;
  readonly end: WorkEnd;
}

function finish(tx: DbOrTx, { context, end }: Ending): Result<WorkEnded> {
  const order = orderThatMay(tx, { number: end.number, to: 'done' });
  if (!order.ok) return order;
  const done = end.done.trim();
  if (done === '') return failed({ code: 'work-unsaid', sentence: 'Say what was found and done.' });
  const kind = kindOf(order.value);
  const due = dueOf({ kind, end, today: today(context) });
  if (!due.ok) return due;
  const unit = unitWith(tx, order.value.unit_serial);
  if (!unit.ok) return unit;
  changeOrder(tx, {
    id: order.value.id,
    set: {
      state: 'done',
      ended_at: timestamp(context),
      ended_by: context.actor.name,
      result: end.result,
      done,
      hours: end.hours,
      parts_minor: end.partsMinor,
    },
  });
  const repair =
    end.result === 'repair'
      ? addWorkOrder(tx, {
          context,
          serial: unit.value.serial,
          kind: 'repair',
          reason: done,
          pieceId: order.value.piece_id,
        })
      : null;
  const unitState = settleUnit(tx, { context, end, unit: unit.value, due: due.value });
  const detail = { order: end.number, result: end.result, state: unitState, repair };
  logChange(tx, { context, deed: { action: 'work done', subject: `unit ${unit.value.serial}`, detail } });
  return ok({ unitState, repair });
}

interface Due {
  readonly kind: 'inspection' | 'calibration';
  readonly on: IsoDate;
}

interface DueAsked {
  readonly kind: WorkKind;
  readonly end: WorkEnd;
  readonly today: IsoDate;
}

function dueOf({ kind, end, today: day }: DueAsked): Result<Due | null> {
  const asks = asksDueDate(kind);
  if (asks === null || end.result !== 'fit') return ok(null);
  if (end.dueOn === null || !isIsoDate(end.dueOn) || end.dueOn <= day)
    return failed({ code: 'due-date-missing', sentence: `Say when the next ${asks} falls due: a day after today.` });
  return ok({ kind: asks, on: end.dueOn });
}

interface Settling extends Ending {
  readonly unit: UnitRow;
  readonly due: Due | null;
}

function settleUnit(tx: DbOrTx, { context, end, unit, due }: Settling): WorkEnded['unitState'] {
  const others = unendedOrders(tx, unit.serial);
  const state = unitAfterWork({ result: end.result, stillOpen: others.map(kindOf) });
  if (state === 'retired') {
    for (const { id } of others)
      changeOrder(tx, {
        id,
        set: {
          state: 'withdrawn',
          ended_at: timestamp(context),
          ended_by: context.actor.name,
          done: 'the unit was retired',
        },
      });
  }
  const day = today(context);
  const dates =
    due === null
      ? {}
      : due.kind === 'inspection'
        ? { inspection_due_on: due.on, inspection_done_on: day }
        : { calibration_due_on: due.on, calibration_done_on: day };
  moveUnit(tx, {
    context,
    unit,
    set: { state, ...dates },
    kind: due?.kind ?? 'state',
    before: unit.state,
    after: due === null ? state : `${state}, next due ${due.on}`,
    reason: end.done.trim(),
    reference: end.number,
  });
  return state;
}

interface Step {
  readonly number: string;
  readonly to: 'doing' | 'done';
}

function orderThatMay(tx: DbOrTx, { number, to }: Step): Result<WorkOrderRow> {
  const order = findOrder(tx, number);
  if (!order)
    return failed({ code: 'no-such-work-order', sentence: `There is no work order ${number}; load the list again.` });
  const others = unendedOrders(tx, order.unit_serial).filter(({ id }) => id !== order.id);
  const decided = decideWorkStep({ order: named(order), to, others: others.map(named) });
  return decided.ok ? ok(order) : decided;
}

function named(order: WorkOrderRow) {
  return { number: order.number, kind: kindOf(order), state: stateOf(order) };
}

export function kindOf({ kind }: Pick<WorkOrderRow, 'kind'>): WorkKind {
  const known = WORK_KINDS.find((one) => one === kind);
  invariant(known !== undefined, `A work order cannot be ${kind}.`);
  return known;
}

function stateOf({ state }: Pick<WorkOrderRow, 'state'>): WorkState {
  const known = WORK_STATES.find((one) => one === state);
  invariant(known !== undefined, `A work order cannot be ${state}.`);
  return known;
}
