/*
 * A unit is scanned for a booking: the one that is held, another free one of its model in its place, or one that may stand in.
 * Invariant: a unit of another model stands in only where every line of the plan keeps its settings, as the site sheets say them.
 * Not here: the decision on the unit itself (lib/stock/pick-scan.ts), the rules (lib/planning/stand-in.ts).
 * Read next: ../replace-unit.ts, ../step-units.ts.
 */
import { bookingHolding } from '#db/queries/picking.ts';
import { findUnit } from '#db/queries/stock.ts';
import type { Model } from '#lib/equipment/model.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type LineWithStandIn, tryStandIn } from '#lib/planning/stand-in.ts';
import { stockQuestion } from '#lib/services/house/house-facts.ts';
import { freeUnits } from '#lib/stock/free-units.ts';
import { decidePick, type PickRow, type ScannedUnit } from '#lib/stock/pick-scan.ts';
import { bookedUnitStateOf } from '../booking-record.ts';
import { replaceUnit } from '../replace-unit.ts';
import { stepUnits } from '../step-units.ts';
import { type PickFacts, pickFacts } from './pick-facts.ts';
import { type ScanAnswer, type ScanWork, wrongLabel } from './scan-work.ts';

export function scanUnit(at: ScanWork): Result<ScanAnswer> {
  const { tx, context, booking, read } = at;
  if (read.kind !== 'unit') return wrongLabel(read, 'the serial number of a piece');
  const { serial } = read;
  const facts = pickFacts(tx, { context, booking });
  const unit = scannedUnit(at, facts, serial);
  const question = stockQuestion(context, { window: facts.window });
  const decided = decidePick({
    serial,
    unit,
    rows: rowsOf(facts),
    otherBooking: bookingHolding(tx, { serial, window: facts.window, beside: booking.id }) ?? null,
    isFree: freeUnits(question).some((free) => free.serial === serial),
    window: facts.window,
  });
  if (!decided.ok) return decided;
  switch (decided.value.kind) {
    case 'take':
      return allocate(at, { facts, id: decided.value.row.id, sentence: `${serial} picked.` });
    case 'swap':
      return swap(at, { facts, row: decided.value.row, serial, detail: '' });
    case 'stand in':
      return standIn(at, { facts, rows: decided.value.rows, serial, standIn: unit?.model ?? '' });
  }
}

function scannedUnit({ tx }: ScanWork, { models }: PickFacts, serial: string): ScannedUnit | null {
  const row = findUnit(tx, serial);
  const model = models.find(({ number }) => number === row?.model_number);
  if (row === undefined || model === undefined) return null;
  return {
    serial,
    model: model.number,
    role: model.role,
    depot: row.depot,
    bay: row.bay,
    state: row.state,
    inspectionDueOn: row.inspection_due_on,
    calibrationDueOn: row.calibration_due_on,
    inspectionDoneOn: row.inspection_done_on,
    calibrationDoneOn: row.calibration_done_on,
  };
}

function rowsOf({ pieces, models }: PickFacts): readonly PickRow[] {
  return pieces.map(({ row, planned, model }) => ({
    id: row.id,
    serial: row.unit_serial,
    model: planned,
    role: roleOf(models, planned) ?? model.role,
    state: bookedUnitStateOf(row),
  }));
}

function roleOf(models: readonly Model[], number: string): Model['role'] | undefined {
  return models.find((model) => model.number === number)?.role;
}

interface Allocating {
  readonly facts: PickFacts;
  readonly id: number;
  readonly sentence: string;
}

function allocate({ tx, context, booking }: ScanWork, { facts, id, sentence }: Allocating): Result<ScanAnswer> {
  const piece = facts.pieces.find(({ row }) => row.id === id);
  const stepped = stepUnits(tx, {
    context,
    booking,
    units: piece === undefined ? [] : [piece.row],
    to: 'allocated',
    what: 'picked by scan',
  });
  return stepped.ok ? ok({ sentence, about: piece?.row.unit_serial ?? '' }) : stepped;
}

interface Swapping {
  readonly facts: PickFacts;
  readonly row: PickRow;
  readonly serial: string;
  readonly detail: string;
}

function swap(at: ScanWork, { facts, row, serial, detail }: Swapping): Result<ScanAnswer> {
  const { tx, context, booking } = at;
  const held = facts.pieces.find((piece) => piece.row.id === row.id)?.row;
  if (held === undefined) return failed({ code: 'not-in-this-job', sentence: `${row.serial} is not in this job.` });
  const replaced = replaceUnit(tx, {
    context,
    booking,
    row: held,
    serial,
    window: { starts_on: held.starts_on, ends_before: held.ends_before },
    freeAgainOn: held.free_again_on,
    why: 'scanned while picking',
    detail,
  });
  if (!replaced.ok) return replaced;
  const stepped = stepUnits(tx, { context, booking, units: [replaced.value], to: 'allocated', what: 'picked by scan' });
  return stepped.ok ? ok({ sentence: `${serial} picked in place of ${row.serial}.`, about: serial }) : stepped;
}

interface Standing {
  readonly facts: PickFacts;
  readonly rows: readonly PickRow[];
  readonly serial: string;
  readonly standIn: string;
}

/** The first row that it may stand in for; otherwise why not for the first. */
function standIn(at: ScanWork, { facts, rows, serial, standIn: number }: Standing): Result<ScanAnswer> {
  const tried = rows.map((row) => ({ row, answer: mayStandIn(facts, { gone: row.model, standIn: number }) }));
  const fits = tried.find(({ answer }) => answer.ok);
  if (fits !== undefined)
    return swap(at, { facts, row: fits.row, serial, detail: `${number} stands in for ${fits.row.model}.` });
  const [first] = tried;
  return first !== undefined && !first.answer.ok
    ? first.answer
    : failed({ code: 'not-in-this-job', sentence: `${number} is not in this job.` });
}

function mayStandIn(
  { papers, models }: PickFacts,
  { gone, standIn: number }: { readonly gone: string; readonly standIn: string },
): Result<true> {
  if (papers === null) return failed({ code: 'not-in-this-job', sentence: `${number} is not in this job.` });
  const { lines, site, outcome } = papers;
  const known = new Map([...models, ...papers.models].map((model) => [model.number, model]));
  const tried = tryStandIn({ lines, site, models: [...known.values()], outcome, gone, standIn: number });
  if (!tried.ok) return tried;
  const isAlike = kindOf(known.get(gone)) === kindOf(known.get(number));
  const changed = tried.value.find((line) => !isAlike || !keepsSettings(papers.outcome, line));
  if (changed === undefined) return ok(true);
  return failed({
    code: 'stand-in-changes-settings',
    sentence: `${number} would fit, but ${changed.tag} is then set up otherwise than its site sheet says: the Desk decides.`,
  });
}

/** A restraint or an adapter of another kind is set up in another way. */
function kindOf(model: Model | undefined): string {
  return model !== undefined && 'kind' in model.facts ? model.facts.kind : '';
}

type Outcome = NonNullable<PickFacts['papers']>['outcome'];

/** The crew reads gear, direction and limiter settings off the sheet that was printed. */
function keepsSettings(outcome: Outcome, { tag, assembly }: LineWithStandIn): boolean {
  const before = outcome.lines
    .find((line) => line.tag === tag)
    ?.parts.flatMap((part) => outcome.assemblies[part.assembly] ?? []);
  const settings = ({ parts, opening, closing }: LineWithStandIn['assembly']) =>
    JSON.stringify([
      parts.gear,
      ...[opening, closing].map(({ unseat, run, seat, select }) => [unseat, run, seat, select]),
    ]);
  return before?.some((one) => settings(one) === settings(assembly)) ?? false;
}
