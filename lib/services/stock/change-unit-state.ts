/*
 * Sets a unit ready, in quarantine, in the workshop, lost or retired, with the reason, and says whose bookings that hits.
 * Invariant: a booking that it hits keeps the unit until somebody swaps it; the answer names each.
 * Not here: what a hire does to a unit's state (lib/services/yard).
 * Read next: ../../stock/unit-state.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { UnitRow } from '#db/queries/equipment.ts';
import { engagementsOfUnit, type UnitEngagement } from '#db/queries/unit-bookings.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { decideStateChange, type SettableState } from '#lib/stock/unit-state.ts';
import { recordUnit, unitNumbered } from './unit-record.ts';

export interface UnitStateChange {
  readonly serial: string;
  readonly to: SettableState;
  readonly reason: string;
}

export interface UnitStateChanged {
  readonly state: SettableState;
  /** Bookings that counted on it and still hold it. */
  readonly hits: readonly UnitEngagement[];
}

export function changeUnitState(context: Context, change: UnitStateChange): Result<UnitStateChanged> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => setState(tx, { context, change }), { behavior: 'immediate' });
}

interface Setting {
  readonly context: Context;
  readonly change: UnitStateChange;
}

function setState(tx: DbOrTx, { context, change }: Setting): Result<UnitStateChanged> {
  const found = unitNumbered(tx, change.serial);
  if (!found.ok) return found;
  const unit = found.value;
  const { to, reason } = change;
  const overdue = overdueCheck(unit, today(context));
  const decided = decideStateChange({ serial: unit.serial, from: unit.state, to, reason, overdue });
  if (!decided.ok) return decided;
  const event = { kind: 'state', before: unit.state, after: to, reason: reason.trim() } as const;
  recordUnit(tx, { context, deed: { serial: unit.serial, set: { state: to }, event } });
  return ok({ state: to, hits: to === 'ready' ? [] : engagementsOfUnit(tx, unit.serial) });
}

export function overdueCheck(unit: UnitRow, day: IsoDate): 'inspection' | 'calibration' | null {
  if (unit.inspection_due_on !== null && unit.inspection_due_on <= day) return 'inspection';
  return unit.calibration_due_on !== null && unit.calibration_due_on <= day ? 'calibration' : null;
}
