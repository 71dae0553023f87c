/*
 * Changes what is noted of a unit: its run hours and its note.
 * Invariant: run hours only grow, unless a reason says why the counter stands lower.
 * Not here: place, state and certificates, which have verbs of their own.
 * Read next: unit-record.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { recordUnit, unitNumbered } from './unit-record.ts';

export interface UnitNote {
  readonly serial: string;
  readonly runHours?: number | undefined;
  readonly note?: string | undefined;
  readonly reason: string;
}

export function changeUnitNote(context: Context, { serial, runHours, note, reason }: UnitNote): Result<true> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx) => {
      const found = unitNumbered(tx, serial);
      if (!found.ok) return found;
      const unit = found.value;
      if (runHours !== undefined && runHours < unit.run_hours && reason.trim() === '')
        return failed({
          code: 'hours-lower',
          sentence: `${unit.serial} has run ${unit.run_hours} h on record: say why its counter stands at ${runHours} h now.`,
        });
      if (runHours !== undefined && runHours !== unit.run_hours) {
        const event = {
          kind: 'run hours',
          before: `${unit.run_hours} h`,
          after: `${runHours} h`,
          reason: reason.trim(),
        } as const;
        recordUnit(tx, { context, deed: { serial: unit.serial, set: { run_hours: runHours }, event } });
      }
      if (note !== undefined && note.trim() !== unit.note) {
        const event = { kind: 'changed', before: unit.note, after: note.trim(), reason: reason.trim() } as const;
        recordUnit(tx, { context, deed: { serial: unit.serial, set: { note: note.trim() }, event } });
      }
      return ok(true);
    },
    { behavior: 'immediate' },
  );
}
