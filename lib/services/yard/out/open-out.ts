/*
 * What leaves for a booking, as the yard sees it: what is on the delivery, what waits, what is not picked yet, and what must be looked at.
 * Invariant: reads only.
 * Not here: loading (load-delivery.ts) and leaving (send-delivery.ts).
 * Read next: load-delivery.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, unitsOfBooking } from '#db/queries/bookings.ts';
import {
  type DeliveryRow,
  deliveriesOfBooking,
  itemsOfDelivery,
  type LoadedUnit,
  unitsOfDelivery,
} from '#db/queries/deliveries.ts';
import { listUnits } from '#db/queries/equipment.ts';
import { bookingFor } from '#db/queries/next-hires.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';
import { type LoadQuestion, type LoadTransport, loadQuestions } from '#lib/stock/load-check.ts';
import { bookingNumbered } from '../booking-record.ts';
import { countedToSend } from './counted-to-send.ts';
import { transportOf } from './delivery-record.ts';
import { caseOf } from './load-delivery.ts';
import { loadFacts } from './load-facts.ts';

export interface OutUnit {
  readonly serial: string;
  readonly name: string;
  readonly caseLabel: string;
}

export interface OutCounted {
  readonly model: string;
  readonly name: string;
  readonly booked: number;
  readonly sent: number;
  readonly onThis: number;
}

export interface SentDelivery {
  readonly id: number;
  readonly sequence: number;
  readonly state: string;
  readonly leftAt: string;
  readonly units: number;
  readonly handedTo: string;
  readonly signedHow: string;
  readonly signedName: string;
  readonly signatureSvg: string;
  readonly loadedBy: string;
  readonly takenBackWhy: string;
  readonly hasDespatch: boolean;
}

export interface OutView {
  readonly number: string;
  readonly state: string;
  readonly customer: string | null;
  readonly title: string | null;
  readonly startsOn: IsoDate | null;
  readonly transport: LoadTransport;
  readonly loading: { readonly id: number; readonly sequence: number; readonly units: readonly OutUnit[] } | null;
  /** Picked and on no delivery yet. */
  readonly waiting: readonly OutUnit[];
  /** In this booking and not picked yet. */
  readonly unpicked: readonly OutUnit[];
  readonly counted: readonly OutCounted[];
  readonly questions: readonly LoadQuestion[];
  readonly sent: readonly SentDelivery[];
  readonly maySend: boolean;
}

export function openOut(context: Context, number: string): Result<OutView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const booking = bookingNumbered(db, number);
  if (!booking.ok) return booking;
  const deliveries = deliveriesOfBooking(db, booking.value.id);
  const loading = deliveries.find(({ state }) => state === 'loading');
  const on = loading === undefined ? [] : unitsOfDelivery(db, loading.id);
  const whose = bookingFor(db, booking.value.id);
  const units = outUnits(db, { context, booking: booking.value });
  const loaded = new Set(on.map(({ serial }) => serial));
  const transport = loading === undefined ? 'road' : transportOf(loading);
  const items = loading === undefined ? [] : itemsOfDelivery(db, loading.id);
  return ok({
    number,
    state: booking.value.state,
    customer: whose?.customer ?? null,
    title: whose?.title ?? null,
    startsOn: units.map(({ startsOn }) => startsOn).toSorted()[0] ?? null,
    transport,
    loading: loading === undefined ? null : { id: loading.id, sequence: loading.sequence, units: on.map(shown) },
    waiting: units.filter(({ state, serial }) => state === 'picked' && !loaded.has(serial)),
    unpicked: units.filter(({ state }) => state === 'held' || state === 'allocated'),
    counted: countedOut(db, { context, booking: booking.value, loading }),
    questions: loadQuestions(loadFacts({ models: knownModels(context), units: on, items, transport })),
    sent: deliveries.filter(({ state }) => state !== 'loading').map((row) => sentDelivery(db, row)),
    maySend: authorise(context, 'send equipment out').ok,
  });
}

function shown({ serial, name, caseLabel }: LoadedUnit): OutUnit {
  return { serial, name, caseLabel };
}

interface OutAsked {
  readonly context: Context;
  readonly booking: BookingRow;
}

function outUnits(db: DbOrTx, { context, booking }: OutAsked) {
  const cases = caseOf(db, booking);
  const names = new Map(knownModels(context).map((model) => [model.number, model.name]));
  const models = new Map(listUnits(db).map(({ serial, model_number }) => [serial, model_number]));
  return unitsOfBooking(db, booking.id).map(({ unit_serial, state, starts_on }) => ({
    serial: unit_serial,
    name: names.get(models.get(unit_serial) ?? '') ?? '',
    caseLabel: cases.get(unit_serial) ?? '',
    state,
    startsOn: starts_on,
  }));
}

function countedOut(
  db: DbOrTx,
  { context, booking, loading }: OutAsked & { readonly loading: DeliveryRow | undefined },
): readonly OutCounted[] {
  const names = new Map(knownModels(context).map((model) => [model.number, model.name]));
  const on = loading === undefined ? [] : itemsOfDelivery(db, loading.id);
  return countedToSend(db, booking).map((one) => ({
    ...one,
    name: names.get(one.model) ?? one.model,
    onThis: on.find(({ model }) => model === one.model)?.count ?? 0,
  }));
}

function sentDelivery(db: DbOrTx, row: DeliveryRow): SentDelivery {
  return {
    id: row.id,
    sequence: row.sequence,
    state: row.state,
    leftAt: row.left_at ?? '',
    units: unitsOfDelivery(db, row.id).length,
    handedTo: row.handed_to,
    signedHow: row.signed_how,
    signedName: row.signed_name,
    signatureSvg: row.signature_svg,
    loadedBy: row.loaded_by,
    takenBackWhy: row.taken_back_why,
    hasDespatch: row.despatch_xml !== null,
  };
}
