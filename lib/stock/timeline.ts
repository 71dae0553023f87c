/*
 * What stands, goes and comes day by day: of each model how many pieces a hire that starts on a day would be granted, and why the others would not.
 * Invariant: free is what freeUnits and freeCounted say of that hire, and every piece is counted exactly once a day.
 * Not here: names and screens.
 * Read next: free-units.ts.
 */
import { addDays, type DateRange, daysBetween, type IsoDate, overlaps, rangeOfDays } from '#lib/kernel/date-range.ts';
import { busyDays, fallsDue, freeCounted, freeUnits, isHireable } from './free-units.ts';
import type { StockQuestion, Unit, UnitBooking } from './unit.ts';

/**
 * Why a piece is not free on a day, the strongest reason first: `held back` in quarantine, workshop or lost; `late` past its day; `booked`;
 * `turnaround` after a hire; `transfer` between depots; `due` for a check; `short gap`: here, but not for long enough before what follows.
 */
export const DAY_STATES = [
  'held back',
  'late',
  'booked',
  'turnaround',
  'transfer',
  'due',
  'short gap',
  'free',
] as const;
export type DayState = (typeof DAY_STATES)[number];

export interface TimelineQuestion {
  readonly stock: Omit<StockQuestion, 'window'>;
  /** The days that are shown. */
  readonly days: DateRange;
  /** Length of the hire that is asked about on each day. */
  readonly hireDays: number;
  /** Empty asks about all depots. */
  readonly depot: string;
}

export interface DayCount {
  readonly on: IsoDate;
  readonly counts: Readonly<Record<DayState, number>>;
}

export interface ModelTimeline {
  readonly model: string;
  readonly total: number;
  readonly days: readonly DayCount[];
}

export interface UnitTimeline {
  readonly serial: string;
  readonly days: readonly { readonly on: IsoDate; readonly state: DayState; readonly number: string }[];
}

/** In order of model number; a model without a piece at the depot is left out. */
export function modelTimelines(question: TimelineQuestion): readonly ModelTimeline[] {
  const models = new Map<string, DayCount[]>();
  const add = (model: string, day: DayCount) => models.set(model, [...(models.get(model) ?? []), day]);
  for (const on of daysOf(question.days)) {
    const counts = new Map<string, Record<DayState, number>>();
    for (const { unit, state } of statesOn(question, on)) {
      const its = counts.get(unit.model) ?? noCounts();
      its[state] += 1;
      counts.set(unit.model, its);
    }
    for (const [model, its] of [...counts, ...countedOn(question, on)]) add(model, { on, counts: its });
  }
  return [...models]
    .map(([model, days]) => ({ model, total: totalOf(days[0]), days }))
    .toSorted((a, b) => (a.model < b.model ? -1 : 1));
}

/** Unit by unit, with the number of the booking or transfer that holds it. */
export function unitTimelines(question: TimelineQuestion): readonly UnitTimeline[] {
  const units = new Map<string, { on: IsoDate; state: DayState; number: string }[]>();
  for (const on of daysOf(question.days)) {
    for (const { unit, state, number } of statesOn(question, on))
      units.set(unit.serial, [...(units.get(unit.serial) ?? []), { on, state, number }]);
  }
  return [...units].map(([serial, days]) => ({ serial, days })).toSorted((a, b) => (a.serial < b.serial ? -1 : 1));
}

interface UnitOnDay {
  readonly unit: Unit;
  readonly state: DayState;
  readonly number: string;
}

function statesOn({ stock, hireDays, depot }: TimelineQuestion, on: IsoDate): readonly UnitOnDay[] {
  const free = new Set(freeUnits({ ...stock, window: rangeOfDays(on, hireDays) }).map(({ serial }) => serial));
  const day = rangeOfDays(on, 1);
  const taken = new Map<string, { readonly state: DayState; readonly number: string }>();
  for (const booking of stock.bookings) {
    if (!overlaps(busyDays({ booking, turnaroundDays: stock.turnaroundDays }), day)) continue;
    const found = { state: engagedAs({ booking, day }), number: booking.number ?? '' };
    const before = taken.get(booking.serial);
    if (before === undefined || rank(found.state) < rank(before.state)) taken.set(booking.serial, found);
  }
  return stock.units
    .filter((unit) => depot === '' || unit.depot === depot)
    .map((unit) => {
      if (!isHireable(unit)) return { unit, state: 'held back', number: '' };
      const held = taken.get(unit.serial);
      if (held !== undefined) return { unit, ...held };
      if (fallsDue({ unit, window: day })) return { unit, state: 'due', number: '' };
      return { unit, state: free.has(unit.serial) ? 'free' : 'short gap', number: '' };
    });
}

function engagedAs({ booking, day }: { readonly booking: UnitBooking; readonly day: DateRange }): DayState {
  if (booking.why === 'transfer') return 'transfer';
  if (!overlaps(booking.window, day)) return 'turnaround';
  return booking.lateFrom !== undefined && booking.lateFrom <= day.starts_on ? 'late' : 'booked';
}

function rank(state: DayState): number {
  return DAY_STATES.indexOf(state);
}

function countedOn(
  { stock, hireDays, depot }: TimelineQuestion,
  on: IsoDate,
): readonly (readonly [string, Record<DayState, number>])[] {
  const at = <Row extends { readonly depot: string }>(rows: readonly Row[]) =>
    rows.filter((row) => depot === '' || row.depot === depot);
  const counted = { shelves: at(stock.counted?.shelves ?? []), holds: at(stock.counted?.holds ?? []) };
  const question = { ...stock, counted, window: rangeOfDays(on, hireDays) };
  const models = [...new Set(counted.shelves.map(({ model }) => model))];
  return models.map((model) => {
    const there = counted.shelves.reduce((sum, shelf) => sum + (shelf.model === model ? shelf.count : 0), 0);
    const held = counted.holds.reduce(
      (sum, hold) =>
        sum + (hold.model === model && hold.days.starts_on <= on && on < hold.days.ends_before ? hold.count : 0),
      0,
    );
    const booked = Math.min(there, held);
    const free = Math.min(there - booked, freeCounted({ question, model }));
    return [model, { ...noCounts(), booked, free, 'short gap': there - booked - free }];
  });
}

function noCounts(): Record<DayState, number> {
  return { 'held back': 0, late: 0, booked: 0, turnaround: 0, transfer: 0, due: 0, 'short gap': 0, free: 0 };
}

function totalOf(day: DayCount | undefined): number {
  return day === undefined ? 0 : Object.values(day.counts).reduce((sum, count) => sum + count, 0);
}

function daysOf(days: DateRange): readonly IsoDate[] {
  return Array.from({ length: daysBetween(days) }, (_, index) => addDays(days.starts_on, index));
}
