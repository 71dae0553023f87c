/*
 * What comes back for a booking, as the yard sees it: what is awaited, what is checked in and what became of it, whom late pieces hit.
 * Invariant: reads only.
 * Not here: checking in (check-in.ts), charges (open-charges.ts).
 * Read next: check-in.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BookingRow, type BookingUnitRow, unitsOfBooking } from '#db/queries/bookings.ts';
import { bookingFor } from '#db/queries/next-hires.ts';
import { notesOfBooking } from '#db/queries/return-notes.ts';
import {
  type CheckedPiece,
  photosOfPieces,
  piecesOfBooking,
  type ReturnRow,
  returnsOfBooking,
} from '#db/queries/returns.ts';
import { findUnit } from '#db/queries/stock.ts';
import { ordersOfPieces } from '#db/queries/work-orders.ts';
import type { Model } from '#lib/equipment/model.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { hasEnded } from '#lib/stock/booking-life.ts';
import type { Contamination } from '#lib/stock/check-in.ts';
import { bookingNumbered, bookingStateOf } from '../booking-record.ts';
import { type Hit, hitsOf, wayFor } from '../engagements.ts';
import { lastNotedReturn } from './charged-as-lost.ts';
import { type CountedPieces, countedPieces } from './counted-pieces.ts';
import { isAwaited } from './find-piece.ts';
import { contaminationOf, contaminationWords } from './return-record.ts';

export interface AwaitedPiece {
  readonly serial: string;
  readonly name: string;
  /** First day on which it is late. */
  readonly endsBefore: IsoDate;
  readonly state: string;
  readonly isLate: boolean;
  /** Machines count hours; limiters can see an overload. */
  readonly countsHours: boolean;
  readonly runHours: number;
  readonly isLimiter: boolean;
}

export interface PieceView {
  readonly id: number;
  readonly serial: string;
  readonly name: string;
  readonly condition: string;
  readonly runHours: number | null;
  readonly missingParts: string;
  readonly note: string;
  readonly sawOverload: boolean;
  readonly unitState: string;
  readonly orders: readonly string[];
  readonly photos: readonly number[];
  readonly isSettled: boolean;
}

export interface ReturnView {
  readonly id: number;
  readonly sequence: number;
  readonly arrivedOn: IsoDate;
  readonly depot: string;
  readonly broughtBy: string;
  readonly contamination: Contamination;
  readonly contaminationWords: string;
  readonly pieces: readonly PieceView[];
}

export interface BackView {
  readonly number: string;
  readonly state: string;
  readonly hasEnded: boolean;
  readonly customer: string | null;
  readonly title: string | null;
  readonly today: IsoDate;
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly depot: string;
  /** In which parts of a repair are written down. */
  readonly currency: string;
  readonly awaited: readonly AwaitedPiece[];
  readonly returns: readonly ReturnView[];
  readonly counted: readonly CountedPieces[];
  /** The return that takes pieces in now; null before one is begun. Of a closed booking only one begun since it closed. */
  readonly taking: number | null;
  /** Bookings that a late piece hits. */
  readonly hits: readonly Hit[];
  readonly notes: readonly { readonly number: string; readonly issuedAt: string }[];
  readonly mayTake: boolean;
}

export function openBack(context: Context, number: string): Result<BackView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const found = bookingNumbered(db, number);
  if (!found.ok) return found;
  const booking = found.value;
  const whose = bookingFor(db, booking.id);
  const models = new Map(knownModels(context).map((model) => [model.number, model]));
  const awaited = unitsOfBooking(db, booking.id).filter(isAwaited);
  const { depots, pricing } = houseFacts(context);
  const pieces = piecesOfBooking(db, booking.id);
  return ok({
    number,
    state: booking.state,
    hasEnded: hasEnded(bookingStateOf(booking)),
    customer: whose?.customer ?? null,
    title: whose?.title ?? null,
    today: today(context),
    depots: depots.map(({ code, name }) => ({ code, name })),
    depot: booking.depot === '' ? (depots[0]?.code ?? '') : booking.depot,
    currency: pricing.currency,
    awaited: awaited.map((row) => awaitedPiece(db, { row, models, today: today(context) })),
    returns: returnsOfBooking(db, booking.id).map((row) =>
      returnView(db, { row, pieces: pieces.filter(({ return_id }) => return_id === row.id) }),
    ),
    counted: countedPieces(context, booking),
    taking: takingReturn(db, booking),
    hits: lateHits(db, { context, booking, awaited }),
    notes: notesOfBooking(db, booking.id).map(({ number: note, issued_at }) => ({ number: note, issuedAt: issued_at })),
    mayTake: authorise(context, 'take equipment back').ok,
  });
}

function takingReturn(db: DbOrTx, booking: BookingRow): number | null {
  const last = returnsOfBooking(db, booking.id).at(-1);
  if (last === undefined) return null;
  if (!hasEnded(bookingStateOf(booking))) return last.id;
  const isSince = booking.closed_at !== null && last.opened_at >= booking.closed_at;
  return isSince && last.id > lastNotedReturn(db, booking) ? last.id : null;
}

interface AwaitedAsked {
  readonly row: BookingUnitRow;
  readonly models: ReadonlyMap<string, Model>;
  readonly today: IsoDate;
}

function awaitedPiece(db: DbOrTx, { row, models, today: day }: AwaitedAsked): AwaitedPiece {
  const unit = findUnit(db, row.unit_serial);
  const model = models.get(unit?.model_number ?? '');
  return {
    serial: row.unit_serial,
    name: model?.name ?? '',
    endsBefore: row.ends_before,
    state: row.state,
    isLate: row.state !== 'lost' && row.ends_before <= day,
    countsHours: model?.role === 'drive',
    runHours: unit?.run_hours ?? 0,
    isLimiter: model?.role === 'option' && model.facts.kind === 'torque limiter',
  };
}

interface ReturnAsked {
  readonly row: ReturnRow;
  readonly pieces: readonly CheckedPiece[];
}

function returnView(db: DbOrTx, { row, pieces }: ReturnAsked): ReturnView {
  return {
    id: row.id,
    sequence: row.sequence,
    arrivedOn: row.arrived_on,
    depot: row.depot,
    broughtBy: row.brought_by,
    contamination: contaminationOf(row),
    contaminationWords: contaminationWords(row),
    pieces: pieces.map((piece) => pieceView(db, piece)),
  };
}

function pieceView(db: DbOrTx, piece: CheckedPiece): PieceView {
  return {
    id: piece.id,
    serial: piece.serial,
    name: piece.name,
    condition: piece.condition,
    runHours: piece.run_hours,
    missingParts: piece.missing_parts,
    note: piece.note,
    sawOverload: piece.saw_overload,
    unitState: findUnit(db, piece.serial)?.state ?? '',
    orders: ordersOfPieces(db, [piece.id]).flatMap(({ number, state }) => (state === 'withdrawn' ? [] : [number])),
    photos: photosOfPieces(db, [piece.id]).flatMap(({ id, removed_at }) => (removed_at === null ? [id] : [])),
    isSettled: piece.note_id !== null,
  };
}

interface LateAsked {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly awaited: readonly BookingUnitRow[];
}

/** Who counts on a piece that should be here by now and is not. */
function lateHits(db: DbOrTx, { context, awaited }: LateAsked): readonly Hit[] {
  const day = today(context);
  const late = awaited.filter(({ state, ends_before }) => state === 'out' && ends_before <= day);
  if (late.length === 0) return [];
  const kept = late.map((row) => ({
    id: row.id,
    serial: row.unit_serial,
    window: { starts_on: row.starts_on, ends_before: addDays(day, 1) },
  }));
  return hitsOf(db, wayFor(db, { context, kept }));
}
