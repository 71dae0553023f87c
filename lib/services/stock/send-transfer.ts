/*
 * Sends units and counted pieces from one depot to the other.
 * Invariant: everything is sent or nothing; what a booking holds meanwhile stays (a hold that ran out is none), and what is on its way is free at neither depot.
 * Not here: taking it in (arrive-transfer.ts).
 * Read next: arrive-transfer.ts, ../../../db/stock-triggers.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { UnitRow } from '#db/queries/equipment.ts';
import { takeNumber } from '#db/queries/house.ts';
import { findShelf } from '#db/queries/stock.ts';
import { insertTransfer, insertTransferItem, insertTransferUnit, transferOfUnit } from '#db/queries/transfers.ts';
import { engagementsOfUnit } from '#db/queries/unit-bookings.ts';
import { type IsoDate, isIsoDate } from '#lib/kernel/date-range.ts';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { freePieces } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { expireHoldsFirst } from '#lib/services/yard/expire-holds.ts';
import { countedModel, writeCount } from './counted.ts';
import { knownDepot, recordUnit, unitNumbered } from './unit-record.ts';

export interface TransferToSend {
  readonly from: string;
  readonly to: string;
  /** First day on which it can be used at the other depot. */
  readonly dueOn: IsoDate;
  readonly serials: readonly string[];
  readonly items: readonly { readonly model: string; readonly count: number }[];
  readonly note: string;
}

/** A unit in these is sent as it is; what is lost, retired or out is not there to be sent. */
const SENDABLE = ['ready', 'back', 'quarantine', 'workshop'];
/** The road between two depots of one house takes no longer. House practice, no source. */
const LONGEST_DAYS = 60;

export function sendTransfer(context: Context, input: TransferToSend): Result<{ readonly number: string }> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  const wrong = wrongTerms(context, input);
  if (wrong !== null) return wrong;
  return context.database.db.transaction(
    (tx) => {
      expireHoldsFirst(tx, context);
      return send(tx, { context, input });
    },
    { behavior: 'immediate' },
  );
}

function wrongTerms(context: Context, { from, to, dueOn, serials, items }: TransferToSend): Failed<Refused> | null {
  for (const code of [from, to]) {
    const depot = knownDepot(context, code);
    if (!depot.ok) return depot;
  }
  if (from === to) return failed({ code: 'same-depot', sentence: 'Choose another depot to send it to.' });
  if (
    !isIsoDate(dueOn) ||
    dueOn <= today(context) ||
    Date.parse(dueOn) - Date.parse(today(context)) > LONGEST_DAYS * 86_400_000
  )
    return failed({
      code: 'due-day-unusable',
      sentence: `Say from which day it can be used at ${to}: after today, and within ${LONGEST_DAYS} days.`,
    });
  if (serials.length === 0 && items.length === 0)
    return failed({ code: 'nothing-to-send', sentence: 'Scan what is to be sent first.' });
  return null;
}

interface Sending {
  readonly context: Context;
  readonly input: TransferToSend;
}

function send(tx: DbOrTx, { context, input }: Sending): Result<{ readonly number: string }> {
  const units: UnitRow[] = [];
  for (const serial of new Set(input.serials.map((typed) => typed.trim().toUpperCase()))) {
    const unit = sendable(tx, { input, serial });
    if (!unit.ok) return unit;
    units.push(unit.value);
  }
  for (const item of input.items) {
    const there = itemSendable(tx, { context, input, item });
    if (!there.ok) return there;
  }
  const number = `T-${String(takeNumber(tx, 'transfer')).padStart(5, '0')}`;
  const dates = { sent_on: today(context), due_on: input.dueOn };
  const id = insertTransfer(tx, {
    number,
    from_depot: input.from,
    to_depot: input.to,
    state: 'on the way',
    ...dates,
    note: input.note.trim(),
    sent_by_id: context.actor.id,
    sent_by: context.actor.name,
  });
  for (const unit of units) {
    insertTransferUnit(tx, { transfer_id: id, unit_serial: unit.serial, ...dates });
    leave(tx, { context, input, unit, number });
  }
  for (const item of input.items) {
    insertTransferItem(tx, { transfer_id: id, model_number: item.model, count: item.count });
    const left = (findShelf(tx, { model: item.model, depot: input.from })?.count ?? 0) - item.count;
    const reason = `sent to ${input.to}`;
    writeCount(tx, { context, model: item.model, depot: input.from, count: left, reason, reference: number });
  }
  const detail = { from: input.from, to: input.to, units: units.length, items: input.items };
  logChange(tx, { context, deed: { action: 'transfer sent', subject: `transfer ${number}`, detail } });
  return ok({ number });
}

/** It counts at the depot it goes to, in no bay yet; what is held back stays so. */
function leave(
  tx: DbOrTx,
  { context, input, unit, number }: Sending & { readonly unit: UnitRow; readonly number: string },
) {
  const state = unit.state === 'ready' || unit.state === 'back' ? 'on the way' : unit.state;
  const event = { kind: 'sent', before: `${unit.depot} ${unit.bay}`, after: input.to, reference: number } as const;
  recordUnit(tx, { context, deed: { serial: unit.serial, set: { depot: input.to, bay: '', state }, event } });
}

function sendable(
  tx: DbOrTx,
  { input, serial }: Pick<Sending, 'input'> & { readonly serial: string },
): Result<UnitRow> {
  const found = unitNumbered(tx, serial);
  if (!found.ok) return found;
  const unit = found.value;
  if (transferOfUnit(tx, unit.serial) !== undefined)
    return failed({
      code: 'unit-on-the-way',
      sentence: `${unit.serial} is on its way already: take that transfer in first.`,
    });
  if (unit.depot !== input.from)
    return failed({
      code: 'other-depot',
      sentence: `${unit.serial} belongs to ${unit.depot}: it cannot be sent from ${input.from}.`,
    });
  if (!SENDABLE.includes(unit.state))
    return failed({ code: 'unit-not-here', sentence: `${unit.serial} is ${unit.state} on record: it cannot be sent.` });
  const held = engagementsOfUnit(tx, unit.serial).find(({ startsOn }) => startsOn < input.dueOn);
  if (held)
    return failed({
      code: 'unit-booked',
      sentence: `${unit.serial} is held by booking ${held.booking} from ${held.startsOn} to before ${held.endsBefore}: send another, or let it arrive before ${held.startsOn}.`,
    });
  return ok(unit);
}

function itemSendable(
  tx: DbOrTx,
  { context, input, item }: Sending & { readonly item: TransferToSend['items'][number] },
): Result<true> {
  const model = countedModel(context, item.model);
  if (!model.ok) return model;
  const there = findShelf(tx, { model: item.model, depot: input.from })?.count ?? 0;
  const window = { starts_on: today(context), ends_before: input.dueOn };
  const free = Math.min(there, freePieces(context, { window })[item.model] ?? 0);
  if (item.count >= 1 && item.count <= free) return ok(true);
  return failed({
    code: 'pieces-not-free',
    sentence: `${item.count} of ${item.model} are to be sent, and ${Math.max(0, free)} of the ${there} at ${input.from} are free until then.`,
  });
}
