/*
 * Reads and writes work orders on units.
 * Invariant: rows are written inside the transaction that decided on them; none is ever deleted.
 * Not here: which step is allowed (lib/stock/work-order.ts).
 * Read next: ../schema/work-order.ts.
 */
import { and, asc, desc, eq, inArray } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { model } from '../schema/model.ts';
import { unit } from '../schema/unit.ts';
import { workOrder } from '../schema/work-order.ts';

export type WorkOrderRow = typeof workOrder.$inferSelect;

export interface OrderOnUnit extends WorkOrderRow {
  readonly name: string;
  readonly depot: string;
  readonly bay: string;
  readonly unit_state: string;
}

const UNENDED = ['open', 'doing'];

interface OrderList {
  readonly state: 'unended' | 'ended';
  readonly most: number;
}

/** What waits longest first; what ended last first. */
export function listOrders(db: DbOrTx, { state, most }: OrderList): readonly OrderOnUnit[] {
  const isUnended = state === 'unended';
  return db
    .select({ row: workOrder, name: model.name, depot: unit.depot, bay: unit.bay, unit_state: unit.state })
    .from(workOrder)
    .innerJoin(unit, eq(unit.serial, workOrder.unit_serial))
    .innerJoin(model, eq(model.number, unit.model_number))
    .where(inArray(workOrder.state, isUnended ? UNENDED : ['done', 'withdrawn']))
    .orderBy(isUnended ? asc(workOrder.id) : desc(workOrder.ended_at))
    .limit(most)
    .all()
    .map(({ row, ...on }) => ({ ...row, ...on }));
}

export function ordersOfPieces(db: DbOrTx, pieces: readonly number[]): readonly WorkOrderRow[] {
  return db
    .select()
    .from(workOrder)
    .where(inArray(workOrder.piece_id, [...pieces]))
    .orderBy(asc(workOrder.id))
    .all();
}

export function unendedOrders(db: DbOrTx, serial: string): readonly WorkOrderRow[] {
  return db
    .select()
    .from(workOrder)
    .where(and(eq(workOrder.unit_serial, serial), inArray(workOrder.state, UNENDED)))
    .orderBy(asc(workOrder.id))
    .all();
}

export function findOrder(db: DbOrTx, number: string): WorkOrderRow | undefined {
  return db.select().from(workOrder).where(eq(workOrder.number, number)).get();
}

export function insertOrder(db: DbOrTx, row: typeof workOrder.$inferInsert): void {
  db.insert(workOrder).values(row).run();
}

interface OrderChange {
  readonly id: number;
  readonly set: Partial<Omit<WorkOrderRow, 'id' | 'number'>>;
}

export function changeOrder(db: DbOrTx, { id, set }: OrderChange): void {
  db.update(workOrder).set(set).where(eq(workOrder.id, id)).run();
}
