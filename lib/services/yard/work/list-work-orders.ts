/*
 * Work orders as the yard sees them: what is open, what waits for a wash, and what ended last.
 * Invariant: reads only; what waits longest stands first.
 * Not here: doing them (step-work-order.ts).
 * Read next: step-work-order.ts.
 */
import { listOrders, type OrderOnUnit } from '#db/queries/work-orders.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { asksDueDate, type WorkKind } from '#lib/stock/work-order.ts';
import { kindOf } from './step-work-order.ts';

/** Nobody reads further on one page. */
const MOST_OPEN = 300;
const MOST_ENDED = 30;

export interface WorkOrderView {
  readonly number: string;
  readonly serial: string;
  readonly name: string;
  readonly place: string;
  readonly unitState: string;
  readonly kind: WorkKind;
  readonly reason: string;
  readonly state: string;
  readonly openedAt: string;
  readonly openedBy: string;
  readonly begunBy: string;
  readonly endedAt: string | null;
  readonly endedBy: string;
  readonly result: string;
  readonly done: string;
  readonly asksDue: 'inspection' | 'calibration' | null;
  /** The wash that must be done before; empty where none is open. */
  readonly waitsFor: string;
}

export interface WorkOrdersView {
  readonly open: readonly WorkOrderView[];
  readonly ended: readonly WorkOrderView[];
  /** In which parts are written down. */
  readonly currency: string;
  readonly mayDo: boolean;
}

export function listWorkOrders(context: Context): Result<WorkOrdersView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const open = listOrders(db, { state: 'unended', most: MOST_OPEN });
  const washes = new Map(open.filter(({ kind }) => kind === 'wash').map((one) => [one.unit_serial, one.number]));
  const view = (row: OrderOnUnit): WorkOrderView => ({
    number: row.number,
    serial: row.unit_serial,
    name: row.name,
    place: `${row.depot} ${row.bay}`,
    unitState: row.unit_state,
    kind: kindOf(row),
    reason: row.reason,
    state: row.state,
    openedAt: row.opened_at,
    openedBy: row.opened_by,
    begunBy: row.begun_by,
    endedAt: row.ended_at,
    endedBy: row.ended_by,
    result: row.result,
    done: row.done,
    asksDue: asksDueDate(kindOf(row)),
    waitsFor: row.kind === 'wash' || row.ended_at !== null ? '' : (washes.get(row.unit_serial) ?? ''),
  });
  return ok({
    open: open.map(view),
    ended: listOrders(db, { state: 'ended', most: MOST_ENDED }).map(view),
    currency: houseFacts(context).pricing.currency,
    mayDo: authorise(context, 'do work orders').ok,
  });
}
