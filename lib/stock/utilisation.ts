/*
 * How much of what the house owns is out on hire: booked unit-days over owned unit-days, by model and depot.
 * Invariant: a booked day is counted once a unit and only inside the window, so a share lies between 0 and 1.
 * Not here: turnaround days (nobody pays for them) and counted items without serial numbers.
 * Read next: unit.ts.
 */
import { type DateRange, daysBetween, type IsoDate } from '#lib/kernel/date-range.ts';
import type { Unit, UnitBooking } from './unit.ts';

/** The house has these no longer; what is in the workshop is owned and earns nothing. */
const GONE = ['lost', 'retired'];

export interface ModelUse {
  readonly model: string;
  readonly depot: string;
  readonly units: number;
  readonly bookedDays: number;
  readonly unitDays: number;
  /** bookedDays over unitDays. */
  readonly share: number;
}

export interface UseQuestion {
  readonly units: readonly Unit[];
  readonly bookings: readonly UnitBooking[];
  readonly window: DateRange;
}

/** One row for each model and depot, the most used first. */
export function utilisation({ units, bookings, window }: UseQuestion): readonly ModelUse[] {
  const days = daysBetween(window);
  const booked = bookedDaysOf({ bookings, window });
  const rows = new Map<string, { model: string; depot: string; units: number; bookedDays: number }>();
  for (const unit of units) {
    const used = booked.get(unit.serial)?.size ?? 0;
    if (GONE.includes(unit.state)) continue;
    const key = `${unit.depot} ${unit.model}`;
    const row = rows.get(key) ?? { model: unit.model, depot: unit.depot, units: 0, bookedDays: 0 };
    rows.set(key, { ...row, units: row.units + 1, bookedDays: row.bookedDays + used });
  }
  return [...rows.values()]
    .map((row) => ({ ...row, unitDays: row.units * days, share: row.bookedDays / (row.units * days) }))
    .toSorted((a, b) => b.share - a.share || (`${a.model} ${a.depot}` < `${b.model} ${b.depot}` ? -1 : 1));
}

/** The same over all depots. */
export function overDepots(rows: readonly ModelUse[]): readonly ModelUse[] {
  const sums = new Map<string, ModelUse>();
  for (const row of rows) {
    const sum = sums.get(row.model);
    const units = (sum?.units ?? 0) + row.units;
    const bookedDays = (sum?.bookedDays ?? 0) + row.bookedDays;
    const unitDays = (sum?.unitDays ?? 0) + row.unitDays;
    sums.set(row.model, { model: row.model, depot: '', units, bookedDays, unitDays, share: bookedDays / unitDays });
  }
  return [...sums.values()].toSorted((a, b) => b.share - a.share || (a.model < b.model ? -1 : 1));
}

/** Booked days of each unit as day numbers from the window's start, so that two rows of one day count once. */
function bookedDaysOf({ bookings, window }: Omit<UseQuestion, 'units'>): ReadonlyMap<string, ReadonlySet<number>> {
  const days = new Map<string, Set<number>>();
  for (const { serial, window: booked } of bookings) {
    const starts_on = inside(booked.starts_on, window);
    const ends_before = inside(booked.ends_before, window);
    if (starts_on >= ends_before) continue;
    const first =
      starts_on === window.starts_on ? 0 : daysBetween({ starts_on: window.starts_on, ends_before: starts_on });
    const set = days.get(serial) ?? new Set<number>();
    for (let day = first; day < first + daysBetween({ starts_on, ends_before }); day += 1) set.add(day);
    days.set(serial, set);
  }
  return days;
}

function inside(date: IsoDate, { starts_on, ends_before }: DateRange): IsoDate {
  if (date < starts_on) return starts_on;
  return date > ends_before ? ends_before : date;
}
