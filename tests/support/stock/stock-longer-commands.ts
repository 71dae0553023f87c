/*
 * Random work that keeps units longer or puts others in their place: extensions, late returns, swaps.
 */
import fc from 'fast-check';
import { expect } from 'vitest';
import { addDays, type DateRange } from '#lib/kernel/date-range.ts';
import type { Hit } from '#lib/services/yard/engagements.ts';
import { extendBooking } from '#lib/services/yard/extend-booking.ts';
import { reportLate } from '#lib/services/yard/report-late.ts';
import { swapUnit } from '#lib/services/yard/swap-unit.ts';
import { agree, bookingAt, command, count } from './stock-commands.ts';
import {
  dayOf,
  daysOf,
  follow,
  freePiecesIn,
  freeSerials,
  HOLDING,
  lapse,
  listed,
  rowsOf,
  unitOf,
  type World,
  type WorldRow,
} from './stock-world.ts';

const index = fc.nat({ max: 20 });

export const extend = fc.record({ at: index, days: fc.integer({ min: 1, max: 8 }) }).map(({ at, days }) =>
  command(`extend ${at} ${days}`, (world, house) => {
    const booking = bookingAt(world, at, 'held');
    if (!booking) return;
    lapse(world);
    const kept = rowsOf(world, booking).filter(({ state }) => HOLDING.includes(state) && state !== 'back');
    const last =
      kept
        .map(({ ends_before }) => ends_before)
        .toSorted()
        .at(-1) ?? dayOf(world);
    const endsBefore = addDays(last, days);
    const asked = { number: booking.number, endsBefore, serials: [], askedBy: '', why: '' };
    const answer = extendBooking(house.context(), asked);
    count(`extend: ${answer.ok ? 'done' : answer.reason.code}`);
    const over = (row: WorldRow): DateRange => ({ starts_on: row.starts_on, ends_before: endsBefore });
    const hits = hitBy(world, { kept, over });
    const due = kept.some(({ serial }) => (unitOf(world, serial).dueOn ?? endsBefore) < endsBefore);
    const pieces = world.pieces.filter(
      (one) => one.booking === booking.number && HOLDING.includes(one.state) && one.ends_before < endsBefore,
    );
    const short = pieces.some(
      (one) => freePiecesIn(world, { starts_on: one.starts_on, ends_before: endsBefore }, booking.number) < one.count,
    );
    if (kept.length === 0 || due) {
      expect(answer.ok).toBe(false);
      return;
    }
    const before = kept.map((row) => ({ ...row }));
    for (const row of kept)
      Object.assign(row, {
        ends_before: endsBefore,
        free_again_on: addDays(endsBefore, world.turnaround),
        expected: null,
      });
    if (answer.ok) {
      expect(short).toBe(false);
      expect(answer.value.moved.map(({ serial, booking: hit }) => `${hit} ${serial}`).toSorted()).toEqual(
        hits.map(named).toSorted(),
      );
      moveAll(world, answer.value.moved);
      for (const one of pieces)
        Object.assign(one, { ends_before: endsBefore, free_again_on: addDays(endsBefore, world.turnaround) });
      return;
    }
    expect(short || cannotAllMove(world, hits), `extend refused as ${answer.reason.code}`).toBe(true);
    for (const [place, row] of kept.entries()) Object.assign(row, before[place]);
  }),
);

interface Kept {
  readonly kept: readonly WorldRow[];
  readonly over: (row: WorldRow) => DateRange;
}

/** Rows of others that want a kept unit while it would be kept, its turnaround included. */
function hitBy(world: World, { kept, over }: Kept): readonly WorldRow[] {
  return world.rows.filter((other) => {
    const days = daysOf(world, other);
    return (
      !kept.includes(other) &&
      kept.some((row) => {
        const { starts_on, ends_before } = over(row);
        const wanted = new Set(listed({ starts_on, ends_before: addDays(ends_before, world.turnaround) }));
        return row.serial === other.serial && days.some((day) => wanted.has(day));
      })
    );
  });
}

function named({ booking, serial }: WorldRow): string {
  return `${booking} ${serial}`;
}

/** Somebody has hands on one of them already, or there are fewer free units of its model than are needed. */
function cannotAllMove(world: World, hits: readonly WorldRow[]): boolean {
  return hits.some(
    (hit) =>
      hit.state !== 'held' ||
      placesFor(world, hit).length < hits.filter((other) => modelOf(world, other) === modelOf(world, hit)).length,
  );
}

function placesFor(world: World, hit: WorldRow): readonly string[] {
  const free = freeSerials(world, { starts_on: hit.starts_on, ends_before: hit.ends_before }, (row) => row === hit);
  return [...free].filter((serial) => serial !== hit.serial && unitOf(world, serial).model === modelOf(world, hit));
}

function modelOf(world: World, { serial }: WorldRow): string {
  return unitOf(world, serial).model;
}

/** Each that was moved got a unit of its model that was free to it. */
function moveAll(world: World, moved: readonly Hit[]): void {
  for (const { booking, serial, instead } of moved) {
    if (instead === null) continue;
    const row = world.rows.find((one) => one.booking === booking && one.serial === serial && one.state === 'held');
    if (!row) throw new Error(`The model has no ${serial} held by ${booking}.`);
    expect(placesFor(world, row)).toContain(instead);
    row.state = 'swapped';
    world.rows.push({ ...row, serial: instead, state: 'held', outOn: null, expected: null, backOn: null });
    count('moved to another unit');
  }
}

export const late = fc.record({ at: index, days: fc.nat({ max: 5 }) }).map(({ at, days }) =>
  command(`late ${at} ${days}`, (world, house) => {
    const booking = bookingAt(world, at, 'out');
    if (!booking) return;
    lapse(world);
    const out = rowsOf(world, booking).filter(({ state }) => state === 'out');
    const from = [dayOf(world), ...out.map(({ ends_before }) => ends_before)].toSorted().at(-1) ?? dayOf(world);
    const expectedBackOn = addDays(from, days);
    const asked = { number: booking.number, serials: [], expectedBackOn, saidBy: '' };
    const answer = reportLate(house.context(), asked);
    agree('late', { right: out.length > 0, answer });
    if (!answer.ok) return;
    const over = (row: WorldRow): DateRange => ({ starts_on: row.starts_on, ends_before: addDays(expectedBackOn, 1) });
    const hits = hitBy(world, { kept: out, over });
    expect(answer.value.hits.map(({ serial, booking: hit }) => `${hit} ${serial}`).toSorted()).toEqual(
      hits.map(named).toSorted(),
    );
    for (const row of out) row.expected = expectedBackOn;
    moveAll(world, answer.value.hits);
    for (const { booking: hit, serial, instead } of answer.value.hits) {
      if (instead !== null) continue;
      const row = world.rows.find((one) => one.booking === hit && one.serial === serial && HOLDING.includes(one.state));
      expect(
        row && (row.state !== 'held' || placesFor(world, row).length === 0),
        `${serial} of ${hit} could move`,
      ).toBe(true);
    }
  }),
);

export const swap = fc
  .record({ at: index, which: fc.nat({ max: 3 }), other: fc.nat({ max: 7 }) })
  .map(({ at, which, other }) =>
    command(`swap ${at} ${which} ${other}`, (world, house) => {
      const booking = bookingAt(world, at, 'out');
      if (!booking) return;
      lapse(world);
      const rows = rowsOf(world, booking).filter(({ state }) => state === 'held' || state === 'out');
      const row = rows[which % Math.max(1, rows.length)];
      const alike = world.units.filter(({ model }) => row !== undefined && model === modelOf(world, row));
      const replacement = other === 7 ? world.units[0] : alike[other % Math.max(1, alike.length)];
      if (!row || !replacement) return;
      const today = dayOf(world);
      const starts_on = laterOf(row.starts_on, today);
      const ends_before = row.ends_before > starts_on ? row.ends_before : addDays(starts_on, 1);
      const window = { starts_on, ends_before };
      const right = freeSerials(world, window).has(replacement.serial) && replacement.model === modelOf(world, row);
      const asked = { number: booking.number, serial: row.serial, replacement: replacement.serial, why: 'model' };
      agree('swap', { right, answer: swapUnit(house.context(), asked) });
      if (!right) return;
      row.state = 'swapped';
      unitOf(world, row.serial).state = 'quarantine';
      const free_again_on = addDays(ends_before, world.turnaround);
      const fresh = { state: 'held', outOn: null, expected: null, backOn: null };
      world.rows.push({ ...row, ...window, ...fresh, free_again_on, serial: replacement.serial });
      follow(world, booking);
    }),
  );

function laterOf(one: string, other: string): string {
  return one < other ? other : one;
}
