/*
 * Writes the stock of the demo house: units with their past, bays, and boxes of counted pieces.
 * Invariant: it is written in the transaction that loads the demo house, and each unit's history begins here.
 * Not here: inventing it (seeds/units.ts, seeds/stock.ts).
 * Read next: ../house/prepare-house.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { insertUnits } from '#db/queries/equipment.ts';
import { saveBay, saveShelf } from '#db/queries/stock.ts';
import { addUnitEvent } from '#db/queries/unit-events.ts';
import { HOUSE_ITSELF } from '#lib/services/context.ts';
import { demoModels, demoUnits } from '#seeds/load.ts';
import { makeBays, makePast, makeShelves } from '#seeds/stock.ts';

export function writeDemoStock(tx: DbOrTx, at: string): void {
  const anchor = at.slice(0, 10);
  const models = demoModels();
  const units = demoUnits({ anchor });
  const shelves = makeShelves(models);
  const past = new Map(makePast({ units, models, anchor }).map((row) => [row.serial, row]));
  for (const { depot, code, walkOrder } of makeBays([...units, ...shelves]))
    saveBay(tx, { depot, code, walk_order: walkOrder });
  for (const { model, ...shelf } of shelves) saveShelf(tx, { model_number: model, ...shelf });
  insertUnits(
    tx,
    units.map((unit) => ({
      serial: unit.serial,
      model_number: unit.model,
      depot: unit.depot,
      bay: unit.bay,
      state: unit.state,
      inspection_due_on: unit.inspectionDueOn,
      calibration_due_on: unit.calibrationDueOn,
      inspection_done_on: past.get(unit.serial)?.inspectionDoneOn ?? null,
      calibration_done_on: past.get(unit.serial)?.calibrationDoneOn ?? null,
      run_hours: past.get(unit.serial)?.runHours ?? 0,
    })),
  );
  for (const { serial, depot, bay, state } of units)
    addUnitEvent(tx, { serial, at, who: HOUSE_ITSELF, kind: 'added', after: `${depot} ${bay}, ${state}` });
}
