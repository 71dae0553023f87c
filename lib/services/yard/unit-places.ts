/*
 * Names of units, their places and states as the yard's services change them, each change with its line in the unit's history.
 * Invariant: no hire, return or work order changes a unit without a line in its history.
 * Not here: deciding the state (lib/stock), the log of the house, which the verb that calls this writes.
 * Read next: ../../../db/queries/stock.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { UnitRow } from '#db/queries/equipment.ts';
import { changeUnit, findUnit } from '#db/queries/stock.ts';
import { addUnitEvent } from '#db/queries/unit-events.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import type { UnitEventKind } from '#lib/stock/unit-event.ts';

export function unitWith(db: DbOrTx, serial: string): Result<UnitRow> {
  const unit = findUnit(db, serial);
  if (unit) return ok(unit);
  return failed({
    code: 'no-such-unit',
    sentence: `There is no unit ${serial}: scan the label again, or type the number as it is engraved.`,
  });
}

interface UnitMove {
  readonly context: Context;
  readonly unit: UnitRow;
  readonly set: Partial<Omit<UnitRow, 'serial' | 'model_number'>>;
  readonly kind: UnitEventKind;
  readonly before: string;
  readonly after: string;
  readonly reason: string;
  /** Number of the booking or work order. */
  readonly reference: string;
}

export function moveUnit(tx: DbOrTx, { context, unit, set, ...event }: UnitMove): void {
  if (Object.keys(set).length > 0) changeUnit(tx, { serial: unit.serial, set });
  addUnitEvent(tx, { serial: unit.serial, at: timestamp(context), who: actingPerson(context), ...event });
}
