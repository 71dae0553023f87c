/*
 * Changes a unit and writes its history and the log of the house, in one transaction.
 * Invariant: no service changes a unit without an entry in its history.
 * Not here: deciding what may change.
 * Read next: move-unit.ts, change-unit-state.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import type { UnitRow } from '#db/queries/equipment.ts';
import { changeUnit, findUnit } from '#db/queries/stock.ts';
import { addUnitEvent, type UnitEventToAdd } from '#db/queries/unit-events.ts';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';

export interface UnitDeed {
  readonly serial: string;
  readonly set: Partial<Omit<UnitRow, 'serial' | 'model_number'>>;
  readonly event: Omit<UnitEventToAdd, 'serial' | 'at' | 'who'>;
}

export function recordUnit(
  tx: DbOrTx,
  { context, deed }: { readonly context: Context; readonly deed: UnitDeed },
): void {
  const { serial, set, event } = deed;
  if (Object.keys(set).length > 0) changeUnit(tx, { serial, set });
  keepUnitEvent(tx, { context, event: { serial, ...event } });
}

interface KeptEvent {
  readonly context: Context;
  readonly event: Omit<UnitEventToAdd, 'at' | 'who'>;
}

export function keepUnitEvent(tx: DbOrTx, { context, event }: KeptEvent): void {
  const { serial, kind, ...detail } = event;
  addUnitEvent(tx, { serial, kind, ...detail, at: timestamp(context), who: context.actor });
  addAuditEntry(tx, {
    at: timestamp(context),
    who: context.actor,
    action: `unit ${kind}`,
    subject: `unit ${serial}`,
    detail_json: JSON.stringify(detail),
  });
}

/** Serial numbers are kept in capitals; whoever types small letters means the same unit. */
export function unitNumbered(db: DbOrTx, serial: string): Result<UnitRow> {
  const row = findUnit(db, serial) ?? findUnit(db, serial.trim().toUpperCase());
  return row ? ok(row) : noSuchUnit(serial);
}

export function noSuchUnit(serial: string): Failed<Refused> {
  return failed({
    code: 'no-such-unit',
    sentence: `There is no unit ${serial.slice(0, 60)} in the house: look it up in the stock, or scan its label again.`,
  });
}

export function knownDepot(context: Context, code: string): Result<{ readonly code: string; readonly name: string }> {
  const depot = houseFacts(context).depots.find((one) => one.code === code);
  if (depot) return ok(depot);
  return failed({
    code: 'no-such-depot',
    sentence: `There is no depot ${code.slice(0, 20)}: choose one of ${houseFacts(context)
      .depots.map((one) => one.code)
      .join(', ')}.`,
  });
}
