/*
 * Takes a delivery back that was sent off by mistake: its units are picked again and stand in the yard, its counted pieces too.
 * Invariant: only as a whole, with a reason, and only while nothing of it was checked in and the booking has not ended; what was signed stays on record.
 * Not here: equipment that really was out (../back).
 * Read next: ../undo-units.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { changeBookingItem, itemsOfBooking, unitsOfBooking } from '#db/queries/bookings.ts';
import { changeDelivery, itemsOfDelivery, unitsOfDelivery } from '#db/queries/deliveries.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { undoUnits } from '../undo-units.ts';
import { moveUnit, unitWith } from '../unit-places.ts';
import { readDelivery } from './delivery-record.ts';

export interface DeliveryUndo {
  readonly deliveryId: number;
  readonly why: string;
}

export function takeBackDelivery(context: Context, undo: DeliveryUndo): Result<{ readonly sequence: number }> {
  const allowed = authorise(context, 'send equipment out');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => takeBack(tx, { context, undo }), { behavior: 'immediate' });
}

interface Undoing {
  readonly context: Context;
  readonly undo: DeliveryUndo;
}

function takeBack(tx: DbOrTx, { context, undo }: Undoing): Result<{ readonly sequence: number }> {
  const record = readDelivery(tx, undo.deliveryId);
  if (!record.ok) return record;
  const { row, booking } = record.value;
  if (row.state !== 'left')
    return failed({
      code: 'delivery-not-left',
      sentence: `This delivery is ${row.state}: there is nothing to take back.`,
    });
  const why = undo.why.trim();
  if (why === '') return failed({ code: 'reason-missing', sentence: 'Say why it is taken back.' });
  const ids = new Set(unitsOfDelivery(tx, row.id).map(({ bookingUnitId }) => bookingUnitId));
  const units = unitsOfBooking(tx, booking.id).filter(({ id }) => ids.has(id));
  const undone = undoUnits(tx, { context, booking, units, to: 'picked', what: 'delivery taken back', why });
  if (!undone.ok) return undone;
  for (const { unit_serial } of units) {
    const unit = unitWith(tx, unit_serial);
    if (!unit.ok) return unit;
    const event = { kind: 'state', before: unit.value.state, after: 'ready', reason: why } as const;
    moveUnit(tx, { context, unit: unit.value, set: { state: 'ready' }, ...event, reference: booking.number });
  }
  for (const sent of itemsOfDelivery(tx, row.id)) {
    const out = itemsOfBooking(tx, booking.id).find(
      ({ model_number, count, state }) => model_number === sent.model && count === sent.count && state === 'out',
    );
    if (out) changeBookingItem(tx, { id: out.id, set: { state: 'picked' } });
  }
  changeDelivery(tx, { id: row.id, set: { state: 'taken back', taken_back_why: why } });
  const detail = { delivery: row.sequence, why };
  logChange(tx, { context, deed: { action: 'delivery taken back', subject: `booking ${booking.number}`, detail } });
  return ok({ sequence: row.sequence });
}
