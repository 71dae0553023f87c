/*
 * What a scanned unit is to a booking that is being picked: the one that is held, a free one in its place, or none of both and why.
 * Invariant: nothing leaves that is held back, booked elsewhere, without its certificate, or due for a check inside the hire.
 * Not here: whether another model may stand in (lib/planning), writing it down (lib/services/yard/picking).
 * Read next: booking-life.ts, free-units.ts.
 */
import type { Role } from '#lib/equipment/model.ts';
import type { DateRange } from '#lib/kernel/date-range.ts';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import type { BookedUnitState } from './booking-life.ts';
import type { Unit } from './unit.ts';

/** A unit with what is kept of its certificates. */
export interface ScannedUnit extends Unit {
  readonly role: Role;
  /** Days on which its newest certificates were made out; null where none is kept. */
  readonly inspectionDoneOn: string | null;
  readonly calibrationDoneOn: string | null;
}

export interface PickRow {
  readonly id: number;
  readonly serial: string;
  /** The model that was planned here. */
  readonly model: string;
  readonly role: Role;
  readonly state: BookedUnitState;
}

export interface PickQuestion {
  readonly serial: string;
  readonly unit: ScannedUnit | null;
  /** Rows of the booking that still hold their unit. */
  readonly rows: readonly PickRow[];
  /** Number of another booking that holds it on these days. */
  readonly otherBooking: string | null;
  /** Nobody holds it on these days, turnaround included. */
  readonly isFree: boolean;
  readonly window: DateRange;
}

export type PickDecision =
  | { readonly kind: 'take'; readonly row: PickRow }
  /** Another unit of the same model. */
  | { readonly kind: 'swap'; readonly row: PickRow }
  /** Another model of the same role: the rules of the plan decide, row by row. */
  | { readonly kind: 'stand in'; readonly rows: readonly PickRow[] };

export function decidePick(question: PickQuestion): Result<PickDecision> {
  const { serial, unit, rows } = question;
  if (unit === null) return no('no-such-unit', `${serial} is no unit of the house.`);
  const own = rows.find((row) => row.serial === serial);
  if (own !== undefined && own.state !== 'held') return alreadyThere(own);
  const fault = faultOf(unit, question.window);
  if (fault !== null) return fault;
  if (own !== undefined) return ok({ kind: 'take', row: own });
  if (question.otherBooking !== null)
    return no('unit-of-another-booking', `${serial} is booked for ${question.otherBooking}.`);
  return inPlaceOf(unit, question);
}

function alreadyThere({ serial, state }: PickRow): Failed<Refused> {
  if (state === 'allocated' || state === 'picked') return no('unit-picked-already', `${serial} is picked already.`);
  return no('unit-left-already', `${serial} is ${state}: it left with this booking.`);
}

/** Why the unit may not leave, whatever booking it is for. */
function faultOf(unit: ScannedUnit, window: DateRange): Failed<Refused> | null {
  if (unit.state !== 'ready') return no('unit-not-ready', `${unit.serial} is ${toldState(unit.state)}: it stays here.`);
  for (const { name, due, done } of checksOf(unit)) {
    if (due !== null && done === null)
      return no('certificate-missing', `${unit.serial} has no ${name} certificate: it stays here.`);
    if (due !== null && due < window.ends_before)
      return no('unit-due-inside-hire', `${unit.serial}: ${name} due ${due}, before the hire ends.`);
  }
  return null;
}

function toldState(state: string): string {
  return state === 'workshop' || state === 'quarantine' ? `in ${state}` : state;
}

function checksOf(unit: ScannedUnit) {
  return [
    { name: 'inspection', due: unit.inspectionDueOn, done: unit.inspectionDoneOn },
    { name: 'calibration', due: unit.calibrationDueOn, done: unit.calibrationDoneOn },
  ] as const;
}

function inPlaceOf(unit: ScannedUnit, { rows, isFree }: PickQuestion): Result<PickDecision> {
  const open = rows.filter(({ state }) => state === 'held');
  const same = open.find(({ model }) => model === unit.model);
  // A charger with another plug and the like never stands in: no chain of the plan could judge it.
  const alike = unit.role === 'accessory' ? [] : open.filter(({ role }) => role === unit.role);
  if (same === undefined && rows.some(({ model }) => model === unit.model))
    return no('model-complete', `All ${unit.model} of this job are picked.`);
  if (same === undefined && alike.length === 0) return no('not-in-this-job', `${unit.model} is not in this job.`);
  if (!isFree) return no('unit-not-free', `${unit.serial} is not free on these days.`);
  return ok(same === undefined ? { kind: 'stand in', rows: alike } : { kind: 'swap', row: same });
}

function no(code: string, sentence: string): Failed<Refused> {
  return failed({ code, sentence });
}
