/*
 * A piece is scanned into a case, or out of it again.
 * Invariant: only what was picked is packed; no case goes over its lift limit or its room.
 * Not here: keeping the answer (../answer-once.ts).
 * Read next: load-facts.ts.
 */
import { changeLoadPiece, insertLoadPiece } from '#db/queries/picking.ts';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import { caseKinds } from '#lib/packing/case-kinds.ts';
import { TWO_PERSONS } from '#lib/packing/lift-mark.ts';
import { decidePutIn } from '#lib/packing/put-in.ts';
import { timestamp } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { pickFacts } from '../picking/pick-facts.ts';
import { type ScanAnswer, type ScanWork, wrongLabel } from '../picking/scan-work.ts';
import {
  type CaseContent,
  type Load,
  type LoadCase,
  type LoadItem,
  loadOfBooking,
  piecesOf,
  storeLoad,
} from './load-facts.ts';

export function packPiece(at: ScanWork & { readonly into: number | null }): Result<ScanAnswer> {
  const { tx, context, booking, read, into } = at;
  if (read.kind !== 'unit' && read.kind !== 'model') return wrongLabel(read, 'the piece that goes in');
  const load = storedLoad(at);
  const about = read.kind === 'unit' ? read.serial : read.model;
  const lying = lyingOf(load, about);
  const unassigned = load.unassigned.filter(({ serial, model }) => (serial ?? model.number) === about);
  if (lying.length === 0 && unassigned.length === 0) return no('not-in-this-job', `${about} is not in this job.`);
  if (![...lying.map(({ content }) => content), ...unassigned].every(({ picked }) => picked))
    return no('not-picked', `${about} was not picked for this job.`);
  const { open, waiting } = whatGoesIn({ lying, unassigned, into });
  if (open.length === 0 && waiting.length === 0) return no('piece-packed-already', `${about} is packed already.`);
  if (into === null && waiting.length > 0)
    return no('case-missing', `${about} has no case yet: choose or scan its case first.`);
  const targets = into === null ? [...new Set(open.map(({ box }) => box.number))] : [into];
  for (const number of targets) {
    const moving =
      into === null
        ? open.filter(({ box }) => box.number === number).map(({ content }) => content)
        : [...open.map(({ content }) => content), ...waiting];
    const may = mayGoIn(at, { load, number, moving });
    if (!may.ok) return may;
  }
  const packed = { packed_at: timestamp(context), packed_by: context.actor.name };
  for (const { content, box } of open)
    if (content.id !== null)
      changeLoadPiece(tx, { id: content.id, set: { ...packed, case_number: into ?? box.number } });
  for (const { serial, model, count } of waiting)
    insertLoadPiece(tx, {
      booking_id: booking.id,
      case_number: into ?? 0,
      unit_serial: serial,
      model_number: model.number,
      count,
      ...packed,
    });
  return ok({ sentence: `${about} in case ${targets.join(' and ')}.`, about });
}

export function unpackPiece(at: ScanWork): Result<ScanAnswer> {
  const { read, tx } = at;
  if (read.kind !== 'unit' && read.kind !== 'model') return wrongLabel(read, 'the piece that comes out');
  const about = read.kind === 'unit' ? read.serial : read.model;
  const lying = lyingOf(storedLoad(at), about).filter(({ content }) => content.packed);
  if (lying.length === 0) return no('not-packed', `${about} is in no case.`);
  for (const { content } of lying)
    if (content.id !== null) changeLoadPiece(tx, { id: content.id, set: { packed_at: null, packed_by: '' } });
  return ok({ sentence: `${about} taken out of case ${lying.map(({ box }) => box.number).join(' and ')}.`, about });
}

/** The load as it is kept; a proposal is kept the moment somebody packs by it. */
function storedLoad({ tx, context, booking }: ScanWork): Load {
  const facts = pickFacts(tx, { context, booking });
  const load = loadOfBooking(tx, { context, facts });
  if (load.isStored) return load;
  storeLoad(tx, { bookingId: booking.id, load });
  return loadOfBooking(tx, { context, facts });
}

interface Lying {
  readonly box: LoadCase;
  readonly content: CaseContent;
}

function lyingOf({ cases }: Load, about: string): readonly Lying[] {
  return cases.flatMap((box) =>
    box.contents.flatMap((content) => ((content.serial ?? content.model.number) === about ? [{ box, content }] : [])),
  );
}

interface Choice {
  readonly lying: readonly Lying[];
  readonly unassigned: readonly LoadItem[];
  readonly into: number | null;
}

/** Of counted pieces that lie in several cases, a case that was chosen gets its own; then what has no case; only then another case's. */
function whatGoesIn({ lying, unassigned, into }: Choice) {
  const unpacked = lying.filter(({ content }) => !content.packed);
  if (into === null) return { open: unpacked, waiting: unassigned };
  const own = unpacked.filter(({ box }) => box.number === into);
  if (own.length > 0) return { open: own, waiting: [] };
  if (unassigned.length > 0) return { open: [], waiting: unassigned };
  return { open: lying.filter(({ box }) => box.number !== into), waiting: [] };
}

interface Moving {
  readonly load: Load;
  readonly number: number;
  readonly moving: readonly Pick<CaseContent, 'serial' | 'model' | 'count'>[];
}

function mayGoIn({ context, booking, tx }: ScanWork, { load, number, moving }: Moving): Result<true> {
  const box = load.cases.find((one) => one.number === number);
  if (box === undefined) return no('no-such-case', `${booking.number} has no case ${number}.`);
  const inside = box.contents.filter(
    ({ packed, serial, model }) =>
      packed && !moving.some((one) => (one.serial ?? one.model.number) === (serial ?? model.number)),
  );
  if (box.name === 'loose') {
    const alone = moving.every(({ serial, model }) =>
      box.contents.some((own) => (own.serial ?? own.model.number) === (serial ?? model.number)),
    );
    return alone ? ok(true) : no('case-loose', `${number} is a piece that travels loose: nothing goes into it.`);
  }
  const cases = caseKinds(pickFacts(tx, { context, booking }).models);
  const kind = cases.find(({ name }) => name === box.name);
  if (kind === undefined) return no('no-such-case', `The house has no case “${box.name}” any more.`);
  return decidePutIn({
    label: `Case ${number}`,
    kind,
    cases,
    onePerson: houseFacts(context).liftLimit,
    twoPersons: TWO_PERSONS,
    inside: piecesOf(inside),
    pieces: piecesOf(moving),
  });
}

function no(code: string, sentence: string): Failed<Refused> {
  return failed({ code, sentence });
}
