/*
 * One unit in full: where it stands, its certificates, what holds it, where it goes, and everything that happened to it.
 * Invariant: reads only.
 * Not here: changing it (move-unit.ts, change-unit-state.ts, record-check.ts, change-unit.ts).
 * Read next: find-units.ts.
 */
import type { UnitRow } from '#db/queries/equipment.ts';
import { listBays } from '#db/queries/stock.ts';
import { transferOfUnit } from '#db/queries/transfers.ts';
import { engagementsOfUnit, type UnitEngagement } from '#db/queries/unit-bookings.ts';
import { type UnitEventRow, unitEvents } from '#db/queries/unit-events.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { unitNumbered } from './unit-record.ts';

export interface UnitDetail {
  readonly unit: UnitRow;
  readonly model: { readonly number: string; readonly name: string; readonly role: string };
  readonly engagements: readonly UnitEngagement[];
  /** The transfer that it is on; null where it stands. */
  readonly transfer: { readonly number: string; readonly to: string; readonly dueOn: IsoDate } | null;
  readonly history: readonly UnitEventRow[];
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly bays: readonly { readonly depot: string; readonly code: string }[];
  readonly today: IsoDate;
  readonly mayChange: boolean;
}

export function openUnit(context: Context, serial: string): Result<UnitDetail> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const found = unitNumbered(db, serial);
  if (!found.ok) return found;
  const unit = found.value;
  const model = knownModels(context).find(({ number }) => number === unit.model_number);
  return ok({
    unit,
    model: { number: unit.model_number, name: model?.name ?? '', role: model?.role ?? '' },
    engagements: engagementsOfUnit(db, unit.serial),
    transfer: transferOfUnit(db, unit.serial) ?? null,
    history: unitEvents(db, unit.serial),
    depots: houseFacts(context).depots.map(({ code, name }) => ({ code, name })),
    bays: listBays(db).map(({ depot, code }) => ({ depot, code })),
    today: today(context),
    mayChange: authorise(context, 'change stock').ok,
  });
}
