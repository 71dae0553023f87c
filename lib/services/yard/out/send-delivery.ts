/*
 * Sends a loaded delivery off: the load looked at, the instruction given, taken over and signed; its units are out from now on.
 * Invariant: every question about this load is answered with yes, somebody signed, and the despatch advice names what left and nothing else.
 * Not here: loading (load-delivery.ts), taking it back (take-back-delivery.ts).
 * Read next: delivery-despatch.ts, ../step-units.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { changeBookingItem, insertBookingItem, itemsOfBooking, unitsOfBooking } from '#db/queries/bookings.ts';
import {
  changeDelivery,
  itemsOfDelivery,
  type LoadedItem,
  type LoadedUnit,
  unitsOfDelivery,
} from '#db/queries/deliveries.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { INSTRUCTION_POINTS, loadQuestions } from '#lib/stock/load-check.ts';
import { type Strokes, signatureSvg } from '#lib/stock/signature.ts';
import { stepUnits } from '../step-units.ts';
import { moveUnit, unitWith } from '../unit-places.ts';
import { deliveryDespatch } from './delivery-despatch.ts';
import { type DeliveryRecord, deliveryBeingLoaded, transportOf } from './delivery-record.ts';
import { loadFacts } from './load-facts.ts';

export type Signature =
  | { readonly how: 'drawn'; readonly name: string; readonly strokes: Strokes }
  | { readonly how: 'typed'; readonly name: string };

export interface Leaving {
  readonly deliveryId: number;
  /** Ids of the questions that were answered with yes. */
  readonly checks: readonly string[];
  readonly loadedBy: string;
  readonly vehicle: string;
  readonly instructedBy: string;
  /** Points of the instruction that were gone through. */
  readonly instruction: readonly string[];
  readonly handedTo: string;
  readonly signature: Signature;
}

export interface Left {
  readonly sequence: number;
  readonly serials: readonly string[];
}

export function sendDelivery(context: Context, leaving: Leaving): Result<Left> {
  const allowed = authorise(context, 'send equipment out');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => leave(tx, { context, leaving }), { behavior: 'immediate' });
}

interface Going {
  readonly context: Context;
  readonly leaving: Leaving;
}

function leave(tx: DbOrTx, { context, leaving }: Going): Result<Left> {
  const record = deliveryBeingLoaded(tx, leaving.deliveryId);
  if (!record.ok) return record;
  const units = unitsOfDelivery(tx, leaving.deliveryId);
  const items = itemsOfDelivery(tx, leaving.deliveryId);
  if (units.length === 0)
    return failed({ code: 'nothing-loaded', sentence: 'Nothing is loaded yet: scan what goes on it.' });
  const transport = transportOf(record.value.row);
  const questions = loadQuestions(loadFacts({ models: knownModels(context), units, items, transport }));
  const open = questions.find(({ id }) => !leaving.checks.includes(id));
  if (open) return failed({ code: 'load-unchecked', sentence: `Not looked at yet: ${open.words}.` });
  const people = isComplete(leaving);
  if (!people.ok) return people;
  const svg = leaving.signature.how === 'typed' ? ok('') : signatureSvg(leaving.signature.strokes);
  if (!svg.ok) return svg;
  const going = { context, leaving, record: record.value, units, items };
  const stepped = putOut(tx, going);
  if (!stepped.ok) return stepped;
  const xml = deliveryDespatch(tx, going);
  const said = questions.map(({ id, words }) => ({ id, words, by: context.actor.name }));
  changeDelivery(tx, {
    id: leaving.deliveryId,
    set: {
      state: 'left',
      checks_json: JSON.stringify(said),
      loaded_by: leaving.loadedBy.trim(),
      vehicle: leaving.vehicle.trim(),
      instructed_by: leaving.instructedBy.trim(),
      instruction_json: JSON.stringify(leaving.instruction),
      handed_to: leaving.handedTo.trim(),
      signed_how: leaving.signature.how,
      signed_name: leaving.signature.name.trim(),
      signature_svg: svg.value,
      left_at: timestamp(context),
      ...(xml === null ? {} : { despatch_xml: xml, despatch_sha256: sha256(xml) }),
    },
  });
  const serials = units.map(({ serial }) => serial);
  const { sequence } = record.value.row;
  const detail = { delivery: sequence, serials, handedTo: leaving.handedTo, signed: leaving.signature.how };
  logChange(tx, { context, deed: { action: 'sent out', subject: `booking ${record.value.booking.number}`, detail } });
  return ok({ sequence, serials });
}

function isComplete({ loadedBy, instructedBy, instruction, handedTo, signature }: Leaving): Result<true> {
  if (loadedBy.trim() === '') return failed({ code: 'loader-unnamed', sentence: 'Say who loaded it.' });
  const missing = INSTRUCTION_POINTS.find((point) => !instruction.includes(point));
  if (missing !== undefined) return failed({ code: 'instruction-open', sentence: `Not gone through yet: ${missing}.` });
  if (instructedBy.trim() === '')
    return failed({ code: 'instructor-unnamed', sentence: 'Say who gave the instruction.' });
  if (handedTo.trim() === '') return failed({ code: 'receiver-unnamed', sentence: 'Say to whom it is handed over.' });
  if (signature.name.trim() === '')
    return failed({ code: 'signer-unnamed', sentence: 'The name of who signs belongs beside the signature.' });
  return ok(true);
}

export interface GoingOut extends Going {
  readonly record: DeliveryRecord;
  readonly units: readonly LoadedUnit[];
  readonly items: readonly LoadedItem[];
}

function putOut(tx: DbOrTx, { context, record, units, items }: GoingOut): Result<unknown> {
  const { booking, row } = record;
  const ids = new Set(units.map(({ bookingUnitId }) => bookingUnitId));
  const rows = unitsOfBooking(tx, booking.id).filter(({ id }) => ids.has(id));
  const detail = `delivery ${row.sequence}`;
  const stepped = stepUnits(tx, { context, booking, units: rows, to: 'out', what: 'sent out', detail });
  if (!stepped.ok) return stepped;
  for (const { unit_serial } of rows) {
    const unit = unitWith(tx, unit_serial);
    if (!unit.ok) return unit;
    moveUnit(tx, {
      context,
      unit: unit.value,
      set: { state: 'out' },
      kind: 'out',
      before: unit.value.state,
      after: 'out',
      reason: detail,
      reference: booking.number,
    });
  }
  for (const item of items) sendItem(tx, { bookingId: booking.id, ...item });
  return ok(true);
}

/** What stays behind of a counted model becomes a row of its own. */
function sendItem(tx: DbOrTx, sent: LoadedItem & { readonly bookingId: number }): void {
  let left = sent.count;
  for (const row of itemsOfBooking(tx, sent.bookingId)) {
    if (left === 0 || row.model_number !== sent.model || !['held', 'allocated', 'picked'].includes(row.state)) continue;
    const { id, ...stays } = row;
    const goes = Math.min(left, row.count);
    changeBookingItem(tx, { id, set: { count: goes, state: 'out' } });
    if (goes < row.count) insertBookingItem(tx, { ...stays, count: row.count - goes });
    left -= goes;
  }
}
