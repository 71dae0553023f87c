/*
 * One walk through a depot for all bookings that leave on a day: bay by bay, and for each piece the booking whose crate it goes into.
 * Invariant: reads only; a piece stands on the walk exactly where the list of its own booking has it.
 * Not here: scans (walk-scan.ts), trying chains and tests, which each booking has on its own list.
 * Read next: walk-bookings.ts, pick-lines.ts.
 */
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { type PickLine, pickLines, walkPlaces } from './pick-lines.ts';
import { walkBookings } from './walk-bookings.ts';

/** A piece, and the booking whose crate it goes into. */
export interface WalkPiece extends PickLine {
  readonly booking: string;
}

export interface WalkStop {
  readonly bay: string;
  readonly pieces: readonly WalkPiece[];
}

export interface WalkCrate {
  readonly booking: string;
  readonly customer: string;
  readonly title: string;
  readonly state: string;
  readonly startsOn: IsoDate;
  /** It should have left before this day. */
  readonly isLate: boolean;
  /** Pieces of it in this depot, and how many of them are picked. */
  readonly pieces: number;
  readonly picked: number;
}

export interface WalkDepot {
  readonly code: string;
  readonly name: string;
  readonly toPick: number;
}

export interface WalkView {
  readonly day: IsoDate;
  readonly today: IsoDate;
  readonly depot: string;
  readonly depots: readonly WalkDepot[];
  readonly crates: readonly WalkCrate[];
  readonly stops: readonly WalkStop[];
  readonly pieces: number;
  readonly picked: number;
}

export interface WalkAsked {
  /** Absent: today. */
  readonly day?: string | undefined;
  /** Absent: the depot where most is to be picked. */
  readonly depot?: string | undefined;
}

export function openWalk(context: Context, asked: WalkAsked): Result<WalkView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const day = asked.day ?? today(context);
  const all = walkBookings(db, { context, day });
  const pieces = all
    .filter(({ booking }) => booking.state !== 'held')
    .flatMap(({ booking, facts }) =>
      pickLines(db, facts).map((line): WalkPiece => ({ ...line, booking: booking.number })),
    );
  const depots = houseFacts(context).depots.map(
    ({ code, name }): WalkDepot => ({
      code,
      name,
      toPick: pieces.filter((piece) => piece.depot === code && !piece.picked).length,
    }),
  );
  const most = depots.toSorted((a, b) => b.toPick - a.toPick)[0];
  const depot = asked.depot === undefined ? most : depots.find(({ code }) => code === asked.depot);
  if (depot === undefined)
    return failed({ code: 'no-such-depot', sentence: `The house has no depot ${String(asked.depot).slice(0, 20)}.` });
  const here = pieces.filter((piece) => piece.depot === depot.code).toSorted(walkPlaces(db));
  return ok({
    day,
    today: today(context),
    depot: depot.code,
    depots,
    crates: all.map(({ movement, booking }): WalkCrate => {
      const mine = here.filter((piece) => piece.booking === booking.number);
      return {
        booking: booking.number,
        customer: movement.customer ?? '',
        title: movement.title ?? booking.note,
        state: booking.state,
        startsOn: movement.startsOn,
        isLate: movement.startsOn < day,
        pieces: mine.length,
        picked: mine.filter(({ picked }) => picked).length,
      };
    }),
    stops: stopsOf(here),
    pieces: here.length,
    picked: here.filter(({ picked }) => picked).length,
  });
}

/** Neighbours that lie in one bay are one stop. */
function stopsOf(pieces: readonly WalkPiece[]): readonly WalkStop[] {
  const bays = [...new Set(pieces.map(({ bay }) => bay))];
  return bays.map((bay) => ({ bay, pieces: pieces.filter((piece) => piece.bay === bay) }));
}
