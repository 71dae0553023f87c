/*
 * Who could wait where equipment is short: the bookings whose later start would free pieces, and from which day each could begin.
 * Invariant: a booking is named only where all its pieces of the model are free to it from the day that is given; nothing that has left can wait.
 * Not here: which other models would do (planning), what another depot has (by-depot.ts), whose the bookings are (services).
 * Read next: shortage.ts.
 */
import { daysBetween, type IsoDate, overlaps, rangeOfDays } from '#lib/kernel/date-range.ts';
import { busyDays, freeUnits, isHireable, withTurnaround } from './free-units.ts';
import { firstStart, freeOf, ofModel } from './shortage.ts';
import type { StockQuestion, UnitBooking } from './unit.ts';

export interface CouldWait {
  /** Number of the booking. */
  readonly number: string;
  readonly startsOn: IsoDate;
  /** How many pieces of the model it would free on the days that are asked about. */
  readonly frees: number;
  /** First day on which it could begin instead, for as long. */
  readonly couldStartOn: IsoDate;
}

interface WaitQuestion {
  readonly question: StockQuestion;
  readonly model: string;
}

/** Those that free the most first. */
export function whoCouldWait({ question, model }: WaitQuestion): readonly CouldWait[] {
  const own = ofModel({ question, model });
  const asked = withTurnaround(own);
  const inTheWay = own.bookings.filter(
    (booking) =>
      booking.why !== 'transfer' && overlaps(busyDays({ booking, turnaroundDays: own.turnaroundDays }), asked),
  );
  const numbers = [...new Set(inTheWay.map(({ number = '' }) => number))].filter((number) => number !== '');
  return numbers
    .flatMap((number) => waitOf({ question: own, model, number }))
    .toSorted((a, b) => b.frees - a.frees || (a.number < b.number ? -1 : 1));
}

function waitOf({ question, model, number }: WaitQuestion & { readonly number: string }): readonly CouldWait[] {
  const its = question.bookings.filter((booking) => booking.number === number);
  const [first] = its;
  if (first === undefined || its.some(({ hasLeft }) => hasLeft === true)) return [];
  const without = { ...question, bookings: question.bookings.filter((booking) => booking.number !== number) };
  const frees = freeUnits(without).length - freeUnits(question).length;
  if (frees <= 0) return [];
  // A unit that is held back has to be replaced whenever the booking begins.
  const sound = new Set(question.units.filter(isHireable).map(({ serial }) => serial));
  const count = its.filter(({ serial }) => sound.has(serial)).length;
  const earliest = laterStart({ without, model, first, count });
  return earliest === null ? [] : [{ number, startsOn: first.window.starts_on, frees, couldStartOn: earliest }];
}

interface LaterStart {
  readonly without: StockQuestion;
  readonly model: string;
  readonly first: UnitBooking;
  readonly count: number;
}

/** After the hire that is asked about and its turnaround, on the first day on which as many are free as it holds. */
function laterStart({ without, model, first, count }: LaterStart): IsoDate | null {
  const after = withTurnaround(without).ends_before;
  const window = rangeOfDays(after, daysBetween(first.window));
  const question = { ...without, window };
  return freeOf({ question, model }) >= count ? after : firstStart({ question, model, asked: count });
}
