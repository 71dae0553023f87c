/*
 * Reads and writes deliveries: what leaves for a booking, piece by piece, and its despatch advice.
 * Invariant: rows are written inside the transaction that decided on them.
 * Not here: the states of units (bookings.ts), deciding what may leave (lib/services/yard).
 * Read next: ../schema/delivery.ts.
 */
import { and, asc, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { bookingUnit } from '../schema/booking-unit.ts';
import { delivery } from '../schema/delivery.ts';
import { deliveryItem } from '../schema/delivery-item.ts';
import { deliveryUnit } from '../schema/delivery-unit.ts';
import { model } from '../schema/model.ts';
import { unit } from '../schema/unit.ts';

export type DeliveryRow = typeof delivery.$inferSelect;

export function deliveriesOfBooking(db: DbOrTx, bookingId: number): readonly DeliveryRow[] {
  return db.select().from(delivery).where(eq(delivery.booking_id, bookingId)).orderBy(asc(delivery.sequence)).all();
}

export function findDelivery(db: DbOrTx, id: number): DeliveryRow | undefined {
  return db.select().from(delivery).where(eq(delivery.id, id)).get();
}

export function insertDelivery(db: DbOrTx, row: typeof delivery.$inferInsert): DeliveryRow {
  return db.insert(delivery).values(row).returning().get();
}

interface DeliveryChange {
  readonly id: number;
  readonly set: Partial<Omit<DeliveryRow, 'id'>>;
}

export function changeDelivery(db: DbOrTx, { id, set }: DeliveryChange): void {
  db.update(delivery).set(set).where(eq(delivery.id, id)).run();
}

export interface LoadedUnit {
  readonly bookingUnitId: number;
  readonly serial: string;
  readonly model: string;
  readonly name: string;
  readonly caseLabel: string;
  readonly state: string;
}

export function unitsOfDelivery(db: DbOrTx, deliveryId: number): readonly LoadedUnit[] {
  return db
    .select({
      bookingUnitId: bookingUnit.id,
      serial: bookingUnit.unit_serial,
      model: unit.model_number,
      name: model.name,
      caseLabel: deliveryUnit.case_label,
      state: bookingUnit.state,
    })
    .from(deliveryUnit)
    .innerJoin(bookingUnit, eq(bookingUnit.id, deliveryUnit.booking_unit_id))
    .innerJoin(unit, eq(unit.serial, bookingUnit.unit_serial))
    .innerJoin(model, eq(model.number, unit.model_number))
    .where(eq(deliveryUnit.delivery_id, deliveryId))
    .orderBy(asc(bookingUnit.id))
    .all();
}

export function loadUnit(db: DbOrTx, row: typeof deliveryUnit.$inferInsert): void {
  db.insert(deliveryUnit).values(row).onConflictDoNothing().run();
}

interface OnDelivery {
  readonly deliveryId: number;
  readonly bookingUnitId: number;
}

export function unloadUnit(db: DbOrTx, { deliveryId, bookingUnitId }: OnDelivery): void {
  db.delete(deliveryUnit)
    .where(and(eq(deliveryUnit.delivery_id, deliveryId), eq(deliveryUnit.booking_unit_id, bookingUnitId)))
    .run();
}

export interface LoadedItem {
  readonly model: string;
  readonly name: string;
  readonly count: number;
}

export function itemsOfDelivery(db: DbOrTx, deliveryId: number): readonly LoadedItem[] {
  return db
    .select({ model: deliveryItem.model_number, name: model.name, count: deliveryItem.count })
    .from(deliveryItem)
    .innerJoin(model, eq(model.number, deliveryItem.model_number))
    .where(eq(deliveryItem.delivery_id, deliveryId))
    .orderBy(asc(deliveryItem.model_number))
    .all();
}

/** Nought takes the model off the delivery. */
export function loadItem(db: DbOrTx, row: typeof deliveryItem.$inferInsert): void {
  if (row.count === 0) {
    db.delete(deliveryItem)
      .where(and(eq(deliveryItem.delivery_id, row.delivery_id), eq(deliveryItem.model_number, row.model_number)))
      .run();
    return;
  }
  db.insert(deliveryItem)
    .values(row)
    .onConflictDoUpdate({
      target: [deliveryItem.delivery_id, deliveryItem.model_number],
      set: { count: row.count },
    })
    .run();
}
