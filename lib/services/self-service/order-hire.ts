/*
 * The hire of an order as its owner may see it: what left and when, notices, extensions, what came back, what is missing, and charges the Desk approved.
 * Invariant: names only pieces of this booking, by serial number once they left; charges stand here only as they were issued.
 * Not here: giving notice (off-hire-order.ts) and keeping it longer (extend-order.ts).
 * Read next: order-view.ts.
 */
import { extensionsOfBooking, noticedUnits, noticesOfBooking } from '#db/queries/booking-history.ts';
import { type BookingRow, type BookingUnitRow, unitsOfBooking } from '#db/queries/bookings.ts';
import { deliveriesOfBooking, itemsOfDelivery, unitsOfDelivery } from '#db/queries/deliveries.ts';
import { type WishRow, wishesOfBooking } from '#db/queries/order-hire.ts';
import { notesOfBooking } from '#db/queries/return-notes.ts';
import { type CheckedPiece, piecesOfBooking, returnsOfBooking } from '#db/queries/returns.ts';
import type { ReturnNoteInput } from '#lib/documents/papers/return-inputs.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { type Context, today } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';
import { countedPieces } from '#lib/services/yard/back/counted-pieces.ts';
import { isAwaited } from '#lib/services/yard/back/find-piece.ts';
import { bookedUnitStateOf, bookingStateOf } from '#lib/services/yard/booking-record.ts';
import { hireOfBooking } from '#lib/services/yard/hire-of-booking.ts';
import { unitWith } from '#lib/services/yard/unit-places.ts';
import { hasEnded, holds } from '#lib/stock/booking-life.ts';

export interface HiredPieceView {
  readonly model: string;
  readonly name: string;
  readonly germanName?: string;
  /** Empty for pieces that are held by number. */
  readonly serial: string;
  readonly count: number;
}

export interface BackPieceView extends HiredPieceView {
  readonly condition: string;
  /** As the yard wrote it. */
  readonly missingParts: string;
}

export interface ExtensionAsked {
  readonly until: IsoDate;
  readonly askedAt: string;
  readonly state: 'waits' | 'given' | 'declined';
  /** What the house says to it. */
  readonly answer: string;
}

export interface OrderHire {
  readonly startsOn: IsoDate;
  readonly lastDay: IsoDate;
  readonly isLate: boolean;
  readonly chargeEnds: 'off-hire notice' | 'collection';
  readonly deliveries: readonly { readonly leftAt: string; readonly pieces: readonly HiredPieceView[] }[];
  readonly notices: readonly {
    readonly number: string;
    readonly at: string;
    readonly saidBy: string;
    readonly serials: readonly string[];
  }[];
  /** On hire, and no notice names them yet. */
  readonly toNotice: readonly HiredPieceView[];
  readonly extensions: readonly { readonly until: IsoDate; readonly at: string }[];
  readonly asked: ExtensionAsked | null;
  readonly mayExtend: boolean;
  readonly returns: readonly { readonly arrivedOn: IsoDate; readonly pieces: readonly BackPieceView[] }[];
  /** Of what left: not back, and said to be lost where it is. */
  readonly missing: readonly (HiredPieceView & { readonly lost: 'lost' | 'awaited' })[];
  readonly notes: readonly {
    readonly number: string;
    readonly issuedOn: IsoDate;
    readonly currency: string;
    readonly gross_minor: number;
    readonly lines: readonly { readonly label: string; readonly net_minor: number }[];
  }[];
}

export function orderHire(desk: Context, booking: BookingRow): OrderHire {
  const { db } = desk.database;
  const rows = unitsOfBooking(db, booking.id);
  const standing = rows.filter(({ state }) => state !== 'released' && state !== 'swapped');
  const endsBefore = latest(standing) ?? today(desk);
  const out = rows.filter(({ state }) => state === 'out');
  const named = namedUnits(desk);
  const inGerman = withGermanNames(desk);
  const noticed = noticedUnits(db, booking.id);
  const running = !hasEnded(bookingStateOf(booking));
  return {
    startsOn: standing.map(({ starts_on }) => starts_on).toSorted()[0] ?? today(desk),
    lastDay: addDays(endsBefore, -1),
    isLate: out.some(({ ends_before }) => ends_before <= today(desk)),
    chargeEnds: hireOfBooking(db, { context: desk, booking })?.chargeEnds ?? 'collection',
    deliveries: leftWith(desk, booking).map((one) => ({ ...one, pieces: one.pieces.map(inGerman) })),
    notices: noticesOfBooking(db, booking.id).map((notice) => ({
      number: notice.number,
      at: notice.noticed_at,
      saidBy: notice.said_by,
      serials: rows.filter(({ id }) => noticed.get(id)?.id === notice.id).map(({ unit_serial }) => unit_serial),
    })),
    toNotice: running
      ? out
          .filter(({ id }) => !noticed.has(id))
          .map(named)
          .map(inGerman)
      : [],
    extensions: extensionsOfBooking(db, booking.id).map(({ ends_before, at }) => ({
      until: addDays(ends_before, -1),
      at,
    })),
    asked: askedFor({ wish: wishesOfBooking(db, booking.id)[0], endsBefore }),
    mayExtend: running && booking.confirmed_at !== null && rows.some(mayStayLonger),
    returns: cameBack(desk, booking).map((one) => ({ ...one, pieces: one.pieces.map(inGerman) })),
    missing: notBack(desk, { booking, rows }).map(inGerman),
    notes: notesOfBooking(db, booking.id).map((note) => ({
      number: note.number,
      issuedOn: note.issued_at.slice(0, 10),
      currency: note.currency,
      gross_minor: note.gross_minor,
      lines: (JSON.parse(note.frozen_json) as ReturnNoteInput).charges.lines.map(({ label, net_minor }) => ({
        label,
        net_minor,
      })),
    })),
  };
}

/** Still to come or on hire: its days may grow. */
export function mayStayLonger(row: BookingUnitRow): boolean {
  return holds(bookedUnitStateOf(row)) && row.state !== 'back';
}

function latest(rows: readonly BookingUnitRow[]): IsoDate | undefined {
  return rows
    .map(({ ends_before }) => ends_before)
    .toSorted()
    .at(-1);
}

function namedUnits(desk: Context): (row: BookingUnitRow) => HiredPieceView {
  const names = new Map(knownModels(desk).map(({ number, name }) => [number, name]));
  return ({ unit_serial: serial }) => {
    const unit = unitWith(desk.database.db, serial);
    const model = unit.ok ? unit.value.model_number : '';
    return { model, name: names.get(model) ?? model, serial, count: 1 };
  };
}

/** Pieces with the name that their model has in German, where it has one. */
function withGermanNames(desk: Context) {
  const names = new Map(knownModels(desk).map(({ number, germanName }) => [number, germanName]));
  return <Piece extends HiredPieceView>(piece: Piece): Piece => {
    const germanName = names.get(piece.model);
    return germanName === undefined ? piece : { ...piece, germanName };
  };
}

function leftWith({ database: { db } }: Context, booking: BookingRow): OrderHire['deliveries'] {
  return deliveriesOfBooking(db, booking.id)
    .filter(({ state }) => state === 'left')
    .map(({ id, left_at }) => ({
      leftAt: left_at ?? '',
      pieces: [
        ...unitsOfDelivery(db, id).map(({ model, name, serial }) => ({ model, name, serial, count: 1 })),
        ...itemsOfDelivery(db, id).map(({ model, name, count }) => ({ model, name, serial: '', count })),
      ],
    }));
}

function cameBack(desk: Context, booking: BookingRow): OrderHire['returns'] {
  const { db } = desk.database;
  const pieces = piecesOfBooking(db, booking.id).filter(({ condition }) => condition !== 'missing');
  const counted = countedPieces(desk, booking);
  return returnsOfBooking(db, booking.id).map(({ id, arrived_on }) => ({
    arrivedOn: arrived_on,
    pieces: [
      ...pieces.filter(({ return_id }) => return_id === id).map(backPiece),
      ...counted.flatMap(({ model, name, returns }) =>
        returns
          .filter(({ returnId, back }) => returnId === id && back > 0)
          .map(({ back }) => ({ model, name, serial: '', count: back, condition: '', missingParts: '' })),
      ),
    ],
  }));
}

function backPiece({ model, name, serial, condition, missing_parts }: CheckedPiece): BackPieceView {
  return { model, name, serial, count: 1, condition, missingParts: missing_parts };
}

interface Rows {
  readonly booking: BookingRow;
  readonly rows: readonly BookingUnitRow[];
}

function notBack(desk: Context, { booking, rows }: Rows): OrderHire['missing'] {
  const named = namedUnits(desk);
  const units = rows
    .filter((row) => isAwaited(row) && row.state !== 'back')
    .map((row) => ({ ...named(row), lost: row.state === 'lost' ? ('lost' as const) : ('awaited' as const) }));
  const counted = countedPieces(desk, booking)
    .filter(({ isSold, sent, back }) => !isSold && sent > back)
    .map(({ model, name, sent, back }) => ({ model, name, serial: '', count: sent - back, lost: 'awaited' as const }));
  return [...units, ...counted];
}

function askedFor({
  wish,
  endsBefore,
}: {
  readonly wish: WishRow | undefined;
  readonly endsBefore: IsoDate;
}): ExtensionAsked | null {
  if (wish === undefined || wish.settled === 'replaced') return null;
  const isGiven = wish.settled === 'given' || endsBefore >= wish.ends_before;
  const state = isGiven ? 'given' : wish.settled === 'declined' ? 'declined' : 'waits';
  return { until: addDays(wish.ends_before, -1), askedAt: wish.asked_at, state, answer: wish.answer };
}
