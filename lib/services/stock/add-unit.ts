/*
 * Adds a unit with its serial number, where it stands, and the certificates it comes with.
 * Invariant: a serial number is used once, in capitals; a unit of a counted or made-to-order model is refused.
 * Not here: counted pieces (set-count.ts).
 * Read next: unit-record.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findUnit, insertUnit } from '#db/queries/stock.ts';
import { type IsoDate, isIsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseModels } from '#lib/services/house/house-facts.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { knownBay } from './bays.ts';
import { keepUnitEvent, knownDepot } from './unit-record.ts';

export interface UnitToAdd {
  readonly serial: string;
  readonly model: string;
  readonly depot: string;
  readonly bay: string;
  /** Empty where it needs none. */
  readonly inspectionDueOn: IsoDate | '';
  readonly calibrationDueOn: IsoDate | '';
  readonly note: string;
}

export function addUnit(context: Context, input: UnitToAdd): Result<{ readonly serial: string }> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => add(tx, { context, input }), { behavior: 'immediate' });
}

interface Adding {
  readonly context: Context;
  readonly input: UnitToAdd;
}

function add(tx: DbOrTx, { context, input }: Adding): Result<{ readonly serial: string }> {
  const scan = readScan(input.serial);
  if (scan.kind !== 'unit') {
    return failed({
      code: 'serial-unreadable',
      sentence: `${input.serial.slice(0, 60)} cannot be a serial number: it holds letters and figures in parts joined by hyphens, such as D112-09.`,
    });
  }
  const { serial } = scan;
  if (findUnit(tx, serial)) {
    return failed({
      code: 'serial-taken',
      sentence: `${serial} is in the house already: open it, or give the next number.`,
    });
  }
  const place = placeOf(tx, { context, input });
  if (!place.ok) return place;
  const { model, depot, bay, inspectionDueOn, calibrationDueOn, note } = input;
  insertUnit(tx, {
    serial,
    model_number: model,
    depot,
    bay: bay.toUpperCase(),
    state: 'ready',
    inspection_due_on: inspectionDueOn || null,
    calibration_due_on: calibrationDueOn || null,
    note: note.trim(),
  });
  const after = `${depot} ${bay.toUpperCase()}, ready`;
  keepUnitEvent(tx, { context, event: { serial, kind: 'added', after, reason: note.trim() } });
  return ok({ serial });
}

function placeOf(tx: DbOrTx, { context, input }: Adding): Result<true> {
  const model = houseModels(context).find(({ number }) => number === input.model);
  if (!model) {
    return failed({
      code: 'no-such-model',
      sentence: `There is no model ${input.model.slice(0, 20)} that can be hired; look it up in the list of equipment.`,
    });
  }
  if (model.counted || model.madeToOrder) {
    return failed({
      code: 'model-without-units',
      sentence: model.counted
        ? `${model.number} is held by number: change how many there are under counted pieces.`
        : `${model.number} is made to order and never in stock.`,
    });
  }
  for (const due of [input.inspectionDueOn, input.calibrationDueOn]) {
    if (due !== '' && !isIsoDate(due))
      return failed({ code: 'date-unreadable', sentence: `${due.slice(0, 20)} is not a date in the form 2027-03-31.` });
  }
  const depot = knownDepot(context, input.depot);
  if (!depot.ok) return depot;
  return knownBay(tx, { depot: input.depot, bay: input.bay });
}
