/*
 * Checks one piece of a return in: condition, run hours, what is missing from it, and what becomes of the unit.
 * Invariant: the unit, the booking, the work it needs and the record are written together or not at all; contamination was declared before.
 * Not here: what becomes of a piece (lib/stock/check-in.ts), taking it back (undo-check-in.ts), charges (charges-of.ts).
 * Read next: find-piece.ts, ../step-units.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { changeBookingUnit } from '#db/queries/bookings.ts';
import { changePiece, insertPiece, piecesOfBooking } from '#db/queries/returns.ts';
import { daysBetween } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { type Condition, type Consequence, consequenceOf, consequenceOfFound } from '#lib/stock/check-in.ts';
import { recordMove } from '../booking-record.ts';
import { stepUnits } from '../step-units.ts';
import { moveUnit } from '../unit-places.ts';
import { addWorkOrder } from '../work/open-work-order.ts';
import { type ChargedLoss, cameAfter, chargedAsLost } from './charged-as-lost.ts';
import { type FoundPiece, findBookedPiece, mayComeIn } from './find-piece.ts';
import { whoIs } from './open-return.ts';
import { contaminationOf, type ReturnRecord, returnTakenIn } from './return-record.ts';

export interface PieceSeen {
  readonly returnId: number;
  /** What was scanned or typed. */
  readonly scan: string;
  readonly condition: Condition;
  readonly runHours: number | null;
  readonly missingParts: string;
  readonly note: string;
  readonly sawOverload: boolean;
  readonly repairHours: number;
  readonly repairPartsMinor: number;
}

export interface CheckedIn {
  readonly pieceId: number;
  readonly serial: string;
  readonly unitState: string;
  readonly orders: readonly string[];
}

export function checkIn(context: Context, seen: PieceSeen): Result<CheckedIn> {
  const allowed = authorise(context, 'take equipment back');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => takePieceIn(tx, { context, seen }), { behavior: 'immediate' });
}

interface Taking {
  readonly context: Context;
  readonly seen: PieceSeen;
}

/** Within a transaction of whoever asks. */
export function takePieceIn(tx: DbOrTx, { context, seen }: Taking): Result<CheckedIn> {
  const record = returnTakenIn(tx, seen.returnId);
  if (!record.ok) return record;
  const found = findBookedPiece(tx, { booking: record.value.booking, scan: seen.scan });
  if (!found.ok) return found;
  const open = mayComeIn(found.value);
  if (!open.ok) return open;
  const { booking } = record.value;
  const loss = chargedAsLost(tx, booking).get(found.value.booked.id);
  const after = loss === undefined ? ok(true) : cameAfter(loss, record.value.row);
  if (!after.ok) return after;
  const before = piecesOfBooking(tx, booking.id).find(
    ({ booking_unit_id }) => booking_unit_id === found.value.booked.id,
  );
  const sound = isSound({ context, seen, found: found.value, wasMissing: before === undefined ? 'no' : 'yes' });
  if (!sound.ok) return sound;
  if (before && loss === undefined)
    changePiece(tx, { id: before.id, set: { undone_at: timestamp(context), undone_why: 'it came back after all' } });
  return write(tx, { context, seen, record: record.value, found: found.value, loss });
}

interface Judging extends Taking {
  readonly found: FoundPiece;
  readonly wasMissing: 'yes' | 'no';
}

function isSound({ context, seen, found, wasMissing }: Judging): Result<true> {
  const { unit, booked } = found;
  if (wasMissing === 'yes' && seen.condition === 'missing')
    return failed({ code: 'piece-in-already', sentence: `${unit.serial} is recorded as missing already.` });
  if (seen.condition === 'damaged' && seen.note.trim() === '')
    return failed({ code: 'damage-unsaid', sentence: 'Say in a few words what is broken.' });
  if (seen.runHours === null || seen.condition === 'missing') return ok(true);
  if (seen.runHours < unit.run_hours)
    return failed({
      code: 'run-hours-lower',
      sentence: `${unit.serial} showed ${unit.run_hours} h before: it cannot show ${seen.runHours} h now. Read it again.`,
    });
  const days = daysBetween({ starts_on: booked.out_on ?? booked.starts_on, ends_before: today(context) }) + 1;
  if (seen.runHours - unit.run_hours > 24 * days)
    return failed({
      code: 'run-hours-higher',
      sentence: `${unit.serial} was out for ${days} ${days === 1 ? 'day' : 'days'} and cannot have run ${seen.runHours - unit.run_hours} h more. Read it again.`,
    });
  return ok(true);
}

interface Writing extends Taking {
  readonly record: ReturnRecord;
  readonly found: FoundPiece;
  /** Where it was charged as lost on a note. */
  readonly loss: ChargedLoss | undefined;
}

function write(tx: DbOrTx, { context, seen, record, found, loss }: Writing): Result<CheckedIn> {
  const { unit, booked } = found;
  const { booking, row } = record;
  const consequence = becomes({ context, seen, record, found, loss });
  const stepped = stepIn(tx, { context, seen, record, found, loss });
  if (!stepped.ok) return stepped;
  const pieceId = insertPiece(tx, {
    return_id: row.id,
    booking_unit_id: booked.id,
    condition: seen.condition,
    run_hours: seen.condition === 'missing' ? null : seen.runHours,
    missing_parts: seen.missingParts.trim(),
    note: seen.note.trim(),
    saw_overload: seen.sawOverload,
    repair_hours: seen.repairHours,
    repair_parts_minor: seen.repairPartsMinor,
    // How a piece was lost decides on the waiver for what is broken on it, too.
    ...(loss === undefined ? {} : { cause: loss.piece.cause, cause_words: loss.piece.cause_words }),
    before_json: JSON.stringify({ state: unit.state, depot: unit.depot, run_hours: unit.run_hours }),
    checked_at: timestamp(context),
    ...whoIs(context),
  });
  const isHere = seen.condition !== 'missing' && 'unitState' in consequence;
  const unitState = 'unitState' in consequence ? consequence.unitState : unit.state;
  moveUnit(tx, {
    context,
    unit,
    set: {
      state: unitState,
      ...(isHere ? { depot: row.depot } : {}),
      ...(isHere && seen.runHours !== null ? { run_hours: seen.runHours } : {}),
    },
    kind: seen.condition === 'missing' ? 'missing' : 'back',
    before: unit.state,
    after: unitState,
    reason: toldOf({ seen, loss }),
    reference: booking.number,
  });
  const orders = consequence.work.map((work) => addWorkOrder(tx, { context, serial: unit.serial, ...work, pieceId }));
  const detail = { return: row.sequence, serial: unit.serial, condition: seen.condition, state: unitState, orders };
  logChange(tx, { context, deed: { action: 'piece checked in', subject: `booking ${booking.number}`, detail } });
  return ok({ pieceId, serial: unit.serial, unitState, orders });
}

/** A piece that was charged as lost and is in stock by other ways already: only what is given back for it is left to do. */
const IN_STOCK = { work: [] } as const;

function becomes({ seen, record, found, loss }: Writing): Consequence | typeof IN_STOCK {
  const of = { ...seen, contamination: contaminationOf(record.row) };
  if (loss === undefined) return consequenceOf(of);
  return found.unit.state === 'lost' ? consequenceOfFound(of) : IN_STOCK;
}

function toldOf({ seen, loss }: Pick<Writing, 'seen' | 'loss'>): string {
  const found = loss === undefined ? '' : `found after it was charged as lost on note ${loss.note.number}`;
  return [found, seen.condition, seen.note.trim()].filter((part) => part !== '').join(': ');
}

/** Out to back to checked, or to lost; one that was lost and stands here comes back first. */
function stepIn(tx: DbOrTx, { context, seen, record, found, loss }: Writing): Result<unknown> {
  const { booking, row } = record;
  const step = { context, booking, why: seen.note.trim(), detail: `return ${row.sequence}` };
  if (loss !== undefined) {
    // That it was lost on this hire stays so: the hire is charged to that day, and the booking may have ended.
    const stays = { context, bookingId: booking.id, unit: found.unit.serial, from: 'lost', to: 'lost' } as const;
    changeBookingUnit(tx, { id: found.booked.id, set: { back_on: row.arrived_on } });
    recordMove(tx, { ...stays, what: 'found', why: step.why, detail: step.detail });
    return ok(true);
  }
  if (found.booked.state === 'swapped') {
    changeBookingUnit(tx, { id: found.booked.id, set: { back_on: row.arrived_on } });
    return ok(true);
  }
  if (seen.condition === 'missing')
    return stepUnits(tx, { ...step, units: [found.booked], to: 'lost', what: 'missing' });
  const isBack = found.booked.state === 'back';
  if (!isBack) {
    const back = stepUnits(tx, { ...step, units: [found.booked], to: 'back', what: 'came back' });
    if (!back.ok) return back;
    changeBookingUnit(tx, { id: found.booked.id, set: { back_on: row.arrived_on } });
  }
  return stepUnits(tx, {
    ...step,
    units: [{ ...found.booked, state: 'back' }],
    to: 'checked',
    what: `checked in, ${seen.condition}`,
  });
}
