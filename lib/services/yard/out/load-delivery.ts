/*
 * Loads a delivery: begins it, puts pieces and whole cases on it by scan, takes them off, and counts counted pieces.
 * Invariant: only picked units of this booking are loaded, each on one delivery; the same scan sent twice does nothing twice.
 * Not here: leaving (send-delivery.ts), picking.
 * Read next: send-delivery.ts, ../../../stock/scan-code.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, type BookingUnitRow, unitsOfBooking } from '#db/queries/bookings.ts';
import {
  deliveriesOfBooking,
  insertDelivery,
  loadItem,
  loadUnit,
  unitsOfDelivery,
  unloadUnit,
} from '#db/queries/deliveries.ts';
import { piecesOfLoad } from '#db/queries/picking.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { hasEnded } from '#lib/stock/booking-life.ts';
import type { LoadTransport } from '#lib/stock/load-check.ts';
import { caseCode, readScan } from '#lib/stock/scan-code.ts';
import { whoIs } from '../back/open-return.ts';
import { bookingEnded } from '../back/return-record.ts';
import { bookingNumbered, bookingStateOf } from '../booking-record.ts';
import { countedToSend } from './counted-to-send.ts';
import { type DeliveryRecord, deliveryBeingLoaded } from './delivery-record.ts';

export interface NewDelivery {
  readonly number: string;
  readonly transport: LoadTransport;
}

/** One at a time is loaded: a second call answers the one that is begun. */
export function beginDelivery(context: Context, { number, transport }: NewDelivery): Result<{ readonly id: number }> {
  const allowed = authorise(context, 'send equipment out');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx): Result<{ readonly id: number }> => {
      const booking = bookingNumbered(tx, number);
      if (!booking.ok) return booking;
      if (hasEnded(bookingStateOf(booking.value))) return bookingEnded(booking.value);
      const before = deliveriesOfBooking(tx, booking.value.id);
      const begun = before.find(({ state }) => state === 'loading');
      if (begun) return ok({ id: begun.id });
      if (!unitsOfBooking(tx, booking.value.id).some(({ state }) => state === 'picked'))
        return failed({
          code: 'nothing-picked',
          sentence: `Nothing of booking ${number} is picked and waiting: pick it first.`,
        });
      const { id } = insertDelivery(tx, {
        booking_id: booking.value.id,
        sequence: before.length + 1,
        depot: booking.value.depot,
        transport,
        opened_at: timestamp(context),
        ...whoIs(context),
      });
      const detail = { delivery: before.length + 1, transport };
      logChange(tx, { context, deed: { action: 'loading begun', subject: `booking ${number}`, detail } });
      return ok({ id });
    },
    { behavior: 'immediate' },
  );
}

export interface LoadScan {
  readonly deliveryId: number;
  readonly scan: string;
}

export interface Loaded {
  /** Serial numbers that this scan put on it; empty where they were on it already. */
  readonly loaded: readonly string[];
  readonly said: string;
}

export function scanLoad(context: Context, { deliveryId, scan }: LoadScan): Result<Loaded> {
  const allowed = authorise(context, 'send equipment out');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => loadOnto(tx, { context, deliveryId, scan }), {
    behavior: 'immediate',
  });
}

interface By {
  readonly context: Context;
}

/** Within a transaction of whoever asks; so are the two below. */
export function loadOnto(tx: DbOrTx, { context, deliveryId, scan }: LoadScan & By): Result<Loaded> {
  const record = deliveryBeingLoaded(tx, deliveryId);
  if (!record.ok) return record;
  const meant = unitsMeant(tx, { record: record.value, scan });
  return meant.ok ? load(tx, { context, record: record.value, ...meant.value }) : meant;
}

interface ScanOn {
  readonly record: DeliveryRecord;
  readonly scan: string;
}

interface Meant {
  readonly units: readonly BookingUnitRow[];
  readonly what: string;
}

/** A label of a unit means that unit, that of a case everything in it that has a serial number. */
function unitsMeant(tx: DbOrTx, { record: { booking }, scan }: ScanOn): Result<Meant> {
  const read = readScan(scan);
  const units = unitsOfBooking(tx, booking.id).filter(({ state }) => state !== 'released' && state !== 'swapped');
  if (read.kind === 'unit') {
    const unit = units.findLast(({ unit_serial }) => unit_serial === read.serial);
    if (unit) return ok({ units: [unit], what: read.serial });
    return failed({
      code: 'not-of-this-booking',
      sentence: `${read.serial} does not belong to booking ${booking.number}: leave it here.`,
    });
  }
  if (read.kind === 'case') {
    if (read.booking !== booking.number)
      return failed({
        code: 'not-of-this-booking',
        sentence: `That case belongs to booking ${read.booking}: leave it here.`,
      });
    const inside = new Set(
      piecesOfLoad(tx, booking.id).flatMap((piece) => (piece.case_number === read.number ? [piece.unit_serial] : [])),
    );
    const packed = units.filter(({ unit_serial }) => inside.has(unit_serial));
    if (packed.length > 0) return ok({ units: packed, what: `case ${read.number}` });
    return failed({
      code: 'case-empty',
      sentence: `Nothing with a serial number is packed in case ${read.number}: scan its pieces.`,
    });
  }
  if (read.kind === 'unknown') return failed({ code: 'scan-unreadable', sentence: read.sentence });
  return failed({ code: 'scan-not-loadable', sentence: `That is a ${read.kind}: scan a piece or a case.` });
}

interface LoadingUnits extends Meant {
  readonly context: Context;
  readonly record: DeliveryRecord;
}

function load(tx: DbOrTx, { context, record, units, what }: LoadingUnits): Result<Loaded> {
  const { row, booking } = record;
  const on = new Set(unitsOfDelivery(tx, row.id).map(({ serial }) => serial));
  const fresh = units.filter(({ unit_serial }) => !on.has(unit_serial));
  const unready = fresh.find(({ state }) => state !== 'picked');
  if (unready)
    return failed({
      code: unready.state === 'out' ? 'unit-out-already' : 'unit-not-picked',
      sentence: `${unready.unit_serial} is ${unready.state}: ${unready.state === 'out' ? 'it has left already' : 'pick it first'}.`,
    });
  const cases = caseOf(tx, booking);
  for (const { id, unit_serial } of fresh)
    loadUnit(tx, {
      delivery_id: row.id,
      booking_unit_id: id,
      case_label: cases.get(unit_serial) ?? '',
      loaded_at: timestamp(context),
    });
  const loaded = fresh.map(({ unit_serial }) => unit_serial);
  if (loaded.length === 0) return ok({ loaded, said: `${what} is on it already.` });
  const detail = { delivery: row.sequence, serials: loaded };
  logChange(tx, { context, deed: { action: 'loaded', subject: `booking ${booking.number}`, detail } });
  return ok({ loaded, said: `${what} is on it.` });
}

export function caseOf(tx: DbOrTx, booking: BookingRow): ReadonlyMap<string, string> {
  return new Map(
    piecesOfLoad(tx, booking.id).flatMap((piece) =>
      piece.unit_serial === null
        ? []
        : [[piece.unit_serial, caseCode({ booking: booking.number, number: piece.case_number })]],
    ),
  );
}

export interface Unload {
  readonly deliveryId: number;
  readonly serial: string;
}

export function takeOff(context: Context, { deliveryId, serial }: Unload): Result<{ readonly serial: string }> {
  const allowed = authorise(context, 'send equipment out');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => takeOffFrom(tx, { context, deliveryId, serial }), {
    behavior: 'immediate',
  });
}

export function takeOffFrom(
  tx: DbOrTx,
  { context, deliveryId, serial }: Unload & By,
): Result<{ readonly serial: string }> {
  const record = deliveryBeingLoaded(tx, deliveryId);
  if (!record.ok) return record;
  const on = unitsOfDelivery(tx, deliveryId).find((unit) => unit.serial === serial);
  if (!on) return failed({ code: 'not-loaded', sentence: `${serial} is not on this delivery.` });
  unloadUnit(tx, { deliveryId, bookingUnitId: on.bookingUnitId });
  const subject = `booking ${record.value.booking.number}`;
  logChange(tx, { context, deed: { action: 'taken off', subject, detail: { serial } } });
  return ok({ serial });
}

export interface CountedLoad {
  readonly deliveryId: number;
  readonly model: string;
  readonly count: number;
}

export function countLoad(
  context: Context,
  { deliveryId, model, count }: CountedLoad,
): Result<{ readonly count: number }> {
  const allowed = authorise(context, 'send equipment out');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => countOnto(tx, { context, deliveryId, model, count }), {
    behavior: 'immediate',
  });
}

export function countOnto(
  tx: DbOrTx,
  { context, deliveryId, model, count }: CountedLoad & By,
): Result<{ readonly count: number }> {
  const record = deliveryBeingLoaded(tx, deliveryId);
  if (!record.ok) return record;
  const wanted = countedToSend(tx, record.value.booking).find((one) => one.model === model);
  if (!wanted) return failed({ code: 'not-booked', sentence: `No ${model} is booked here: add it at the Desk first.` });
  if (count > wanted.booked - wanted.sent)
    return failed({
      code: 'more-than-booked',
      sentence: `${wanted.booked} of ${model} are booked and ${wanted.sent} have left: ${count} are too many.`,
    });
  loadItem(tx, { delivery_id: deliveryId, model_number: model, count });
  const subject = `booking ${record.value.booking.number}`;
  logChange(tx, { context, deed: { action: 'counted on', subject, detail: { model, count } } });
  return ok({ count });
}
