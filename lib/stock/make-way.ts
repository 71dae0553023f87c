/*
 * What stands in the way when a unit is kept longer than booked: whose booking it hits, and which unit could take its place there.
 * Invariant: only a unit that nobody has put hands on yet is replaced, by one of the same model that is free over all its days; what cannot be is named.
 * Not here: writing it down (lib/services/yard), and stand-ins of other models, which need a person (lib/planning/stand-in.ts).
 * Read next: free-units.ts.
 */
import { type DateRange, overlaps } from '#lib/kernel/date-range.ts';
import type { BookedUnitState } from './booking-life.ts';
import { busyDays, freeUnits, withTurnaround } from './free-units.ts';
import type { Unit, UnitBooking } from './unit.ts';

/** A row of a booking that holds a unit. */
export interface Engagement extends UnitBooking {
  readonly id: number;
  readonly booking: string;
  readonly state: BookedUnitState;
}

export interface WayAsked {
  readonly units: readonly Unit[];
  readonly engagements: readonly Engagement[];
  /** Who stays longer, and over which days from the first to the last. */
  readonly kept: readonly { readonly id: number; readonly serial: string; readonly window: DateRange }[];
  /** What keeps units besides bookings: transfers between depots. */
  readonly away: readonly UnitBooking[];
  readonly turnaroundDays: number;
}

export interface WayMade {
  readonly moves: readonly { readonly hit: Engagement; readonly to: Unit }[];
  /** Those for whom there is none. */
  readonly hits: readonly Engagement[];
}

export function makeWay({ units, engagements, kept, away, turnaroundDays }: WayAsked): WayMade {
  const keptIds = new Set(kept.map(({ id }) => id));
  const others = engagements.filter(({ id }) => !keptIds.has(id));
  const staying = kept.map(({ serial, window }): UnitBooking => ({ serial, window }));
  const inTheWay = others
    .filter((other) =>
      staying.some(
        ({ serial, window }) =>
          serial === other.serial &&
          overlaps(withTurnaround({ window, turnaroundDays }), busyDays({ booking: other, turnaroundDays })),
      ),
    )
    .toSorted((a, b) =>
      a.window.starts_on < b.window.starts_on ? -1 : a.window.starts_on > b.window.starts_on ? 1 : a.id - b.id,
    );
  const moves: { hit: Engagement; to: Unit }[] = [];
  const hits: Engagement[] = [];
  for (const hit of inTheWay) {
    const to = hit.state === 'held' ? placeFor(hit) : undefined;
    if (to === undefined) hits.push(hit);
    else moves.push({ hit, to });
  }
  return { moves, hits };

  /** Of the same model; from the same depot first, so that the yard's day changes least. */
  function placeFor(hit: Engagement): Unit | undefined {
    const was = units.find(({ serial }) => serial === hit.serial);
    const moved = moves.map(({ hit: { window }, to }): UnitBooking => ({ serial: to.serial, window }));
    const free = freeUnits({
      units: units.filter(({ model }) => model === was?.model),
      bookings: [...others, ...staying, ...moved, ...away],
      window: hit.window,
      turnaroundDays,
    });
    return free.toSorted(
      (a, b) => Number(b.depot === was?.depot) - Number(a.depot === was?.depot) || (a.serial < b.serial ? -1 : 1),
    )[0];
  }
}
