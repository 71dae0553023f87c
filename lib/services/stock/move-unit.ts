/*
 * Puts a unit into another bay of the depot it is in.
 * Invariant: between depots a unit goes by transfer only, so that it is never free at both.
 * Not here: transfers (send-transfer.ts).
 * Read next: unit-record.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { knownBay } from './bays.ts';
import { recordUnit, unitNumbered } from './unit-record.ts';

export interface UnitMove {
  readonly serial: string;
  /** The bay as it is called, or as its label reads. */
  readonly to: string;
}

export function moveUnit(context: Context, { serial, to }: UnitMove): Result<{ readonly bay: string }> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx) => {
      const found = unitNumbered(tx, serial);
      if (!found.ok) return found;
      const unit = found.value;
      const scan = readScan(to);
      const bay = scan.kind === 'bay' ? scan.bay : to.trim().toUpperCase();
      if (unit.state === 'on the way' || (scan.kind === 'bay' && scan.depot !== unit.depot)) {
        return failed({
          code: 'other-depot',
          sentence: `${unit.serial} ${unit.state === 'on the way' ? 'is on its way to' : 'belongs to'} ${unit.depot}: between depots a unit goes by transfer.`,
        });
      }
      const known = knownBay(tx, { depot: unit.depot, bay });
      if (!known.ok) return known;
      if (bay === unit.bay) return ok({ bay });
      const event = { kind: 'moved', before: `${unit.depot} ${unit.bay}`, after: `${unit.depot} ${bay}` } as const;
      recordUnit(tx, { context, deed: { serial: unit.serial, set: { bay }, event } });
      return ok({ bay });
    },
    { behavior: 'immediate' },
  );
}
