/*
 * Which units are free over a whole window, and how many pieces of each model, counted ones included: the one truth that plans, acceptances, shortages and the timeline share.
 * Invariant: a free unit is hireable, not booked on any day of the window (turnaround on both sides), and no check of it falls due inside.
 * Not here: holding units (the database refuses overlaps by itself).
 * Read next: choose-units.ts, shortage.ts.
 */
import { addDays, type DateRange, overlaps } from '#lib/kernel/date-range.ts';
import { mostHeld } from './counted-holds.ts';
import { HIREABLE_STATES, type StockQuestion, type Unit, type UnitBooking } from './unit.ts';

export function freeUnits({ units, bookings, window, turnaroundDays }: StockQuestion): readonly Unit[] {
  const asked = withTurnaround({ window, turnaroundDays });
  const taken = new Set(
    bookings
      .filter((booking) => overlaps(busyDays({ booking, turnaroundDays }), asked))
      .map((booking) => booking.serial),
  );
  return units.filter((unit) => isHireable(unit) && !taken.has(unit.serial) && !fallsDue({ unit, window }));
}

export function freeCount(question: StockQuestion): ReadonlyMap<string, number> {
  const counts = new Map<string, number>(question.units.map((unit) => [unit.model, 0]));
  for (const unit of freeUnits(question)) counts.set(unit.model, (counts.get(unit.model) ?? 0) + 1);
  for (const { model } of question.counted?.shelves ?? []) counts.set(model, freeCounted({ question, model }));
  return counts;
}

/** Pieces on all shelves less the most that others hold on any day of the window. */
export function freeCounted({ question, model }: { readonly question: StockQuestion; readonly model: string }): number {
  const { counted, window, turnaroundDays } = question;
  const there = (counted?.shelves ?? []).reduce((sum, shelf) => sum + (shelf.model === model ? shelf.count : 0), 0);
  const holds = (counted?.holds ?? []).filter((hold) => hold.model === model);
  return Math.max(0, there - mostHeld({ holds, days: withTurnaround({ window, turnaroundDays }) }));
}

export function isHireable(unit: Unit): boolean {
  return HIREABLE_STATES.some((state) => state === unit.state);
}

/** Overdue counts too: a check that was due before the window is still not done. */
export function fallsDue({ unit, window }: { readonly unit: Unit; readonly window: DateRange }): boolean {
  return [unit.inspectionDueOn, unit.calibrationDueOn].some((due) => due !== null && due < window.ends_before);
}

/** A unit is engaged until its turnaround is over. */
export function withTurnaround({
  window,
  turnaroundDays,
}: {
  readonly window: DateRange;
  readonly turnaroundDays: number;
}): DateRange {
  return { starts_on: window.starts_on, ends_before: addDays(window.ends_before, turnaroundDays) };
}

/** From its first day until it may go out again: after the turnaround, and never before the day that was booked. */
export function busyDays({
  booking,
  turnaroundDays,
}: {
  readonly booking: UnitBooking;
  readonly turnaroundDays: number;
}): DateRange {
  if (booking.why === 'transfer') return booking.window;
  const days = withTurnaround({ window: booking.window, turnaroundDays });
  const { freeAgainOn = '' } = booking;
  return freeAgainOn > days.ends_before ? { ...days, ends_before: freeAgainOn } : days;
}
