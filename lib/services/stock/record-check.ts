/*
 * Records an inspection or a calibration of a unit: the day, who did it under which certificate, and when the next falls due.
 * Invariant: the next day lies after the day it was done; nothing done in the future is recorded.
 * Not here: looking at the unit, which the maker's data and competent persons decide.
 * Read next: ../../stock/next-due.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type IsoDate, isIsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';
import { type CheckKind, nextDue } from '#lib/stock/next-due.ts';
import { recordUnit, unitNumbered } from './unit-record.ts';

export interface CheckToRecord {
  readonly serial: string;
  readonly kind: CheckKind;
  readonly doneOn: IsoDate;
  /** Absent takes the interval of the house. */
  readonly dueOn?: IsoDate | undefined;
  /** Number of the certificate, who looked at it. */
  readonly certificate: string;
}

export function recordCheck(context: Context, check: CheckToRecord): Result<{ readonly dueOn: IsoDate }> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => record(tx, { context, check }), { behavior: 'immediate' });
}

interface CheckMade {
  readonly context: Context;
  readonly check: CheckToRecord;
}

function record(tx: DbOrTx, { context, check }: CheckMade): Result<{ readonly dueOn: IsoDate }> {
  const { kind, doneOn, certificate } = check;
  const found = unitNumbered(tx, check.serial);
  if (!found.ok) return found;
  const unit = found.value;
  const wrong = [doneOn, ...(check.dueOn === undefined ? [] : [check.dueOn])].find((day) => !isIsoDate(day));
  if (wrong !== undefined)
    return failed({ code: 'date-unreadable', sentence: `${wrong.slice(0, 20)} is not a date in the form 2027-03-31.` });
  if (doneOn > today(context))
    return failed({ code: 'date-ahead', sentence: `${doneOn} is still to come: record the ${kind} once it is done.` });
  const dueOn = check.dueOn ?? nextDue({ kind, doneOn, pulls: pullsOf(context, unit.model_number) });
  if (dueOn <= doneOn)
    return failed({
      code: 'due-before-done',
      sentence: `The next ${kind} cannot fall due on ${dueOn}, before this one was done.`,
    });
  if (certificate.trim() === '')
    return failed({
      code: 'certificate-missing',
      sentence: `Give the number of the certificate, or who made the ${kind}: it travels with the unit.`,
    });
  const set =
    kind === 'inspection'
      ? { inspection_done_on: doneOn, inspection_due_on: dueOn }
      : { calibration_done_on: doneOn, calibration_due_on: dueOn };
  const event = { kind, before: doneOn, after: dueOn, reason: certificate.trim() } as const;
  recordUnit(tx, { context, deed: { serial: unit.serial, set, event } });
  return ok({ dueOn });
}

function pullsOf(context: Context, number: string): 'chain or sling' | 'other' {
  const model = knownModels(context).find((one) => one.number === number);
  const pulls = model?.role === 'accessory' && ['second chain', 'sling support'].includes(model.facts.kind);
  return pulls ? 'chain or sling' : 'other';
}
