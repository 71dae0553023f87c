/*
 * Ways out of a shortage that stock itself knows: which bookings could begin later, and what stands at another depot.
 * Invariant: a booking is named only where all its pieces of the model are free to it from the day that is given; nothing that has left can wait.
 * Not here: which other models would do (planning), whose the bookings are (services).
 * Read next: shortage.ts.
 */
import { addDays, daysBetween, type IsoDate, overlaps, rangeOfDays } from '#lib/kernel/date-range.ts';
import { busyDays, freeUnits, withTurnaround } from './free-units.ts';
import { firstStart, freeOf, ofModel } from './shortage.ts';
import { TRANSFER_DAYS } from './transfer-days.ts';
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
  const earliest = laterStart({ without, model, first, count: its.length });
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

export interface ToBring {
  readonly model: string;
  readonly depot: string;
  readonly count: number;
  /** Last day on which it can be sent to be there when the hire begins. */
  readonly sendBy: IsoDate;
}

interface BringQuestion {
  readonly question: StockQuestion;
  readonly needs: readonly { readonly model: string; readonly count: number }[];
  /** The depot that despatches. */
  readonly depot: string;
}

/** What the despatching depot lacks and another has free, over the days of the hire. */
export function toBring({ question, needs, depot }: BringQuestion): readonly ToBring[] {
  const sendBy = addDays(question.window.starts_on, -TRANSFER_DAYS);
  const counts = new Map<string, number>();
  for (const { model, count } of needs) counts.set(model, (counts.get(model) ?? 0) + count);
  return [...counts].flatMap(([model, asked]) => {
    const free = freeByDepot(ofModel({ question, model }), model);
    let missing = asked - (free.get(depot) ?? 0);
    return [...free]
      .filter(([other]) => other !== depot)
      .toSorted(([, a], [, b]) => b - a)
      .flatMap(([other, there]) => {
        const count = Math.min(there, missing);
        missing -= Math.max(0, count);
        return count > 0 ? [{ model, depot: other, count, sendBy }] : [];
      });
  });
}

/** Counted pieces that are held from no known depot count against the whole house only. */
function freeByDepot(question: StockQuestion, model: string): ReadonlyMap<string, number> {
  const free = new Map<string, number>();
  for (const unit of freeUnits(question)) free.set(unit.depot, (free.get(unit.depot) ?? 0) + 1);
  const { shelves = [], holds = [] } = question.counted ?? {};
  for (const shelf of shelves) {
    const counted = { shelves: [shelf], holds: holds.filter((hold) => hold.depot === shelf.depot) };
    free.set(shelf.depot, freeOf({ question: { ...question, counted }, model }));
  }
  return free;
}
