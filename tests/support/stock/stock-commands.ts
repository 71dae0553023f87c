/*
 * Random work of a house, done to the services and to the reference model alike; after each piece the two are compared.
 */
import fc from 'fast-check';
import { expect } from 'vitest';
import { unitsOfBooking } from '#db/queries/bookings.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { bookEquipment } from '#lib/services/yard/book-equipment.ts';
import { bookingNumbered } from '#lib/services/yard/booking-record.ts';
import { cancelBooking } from '#lib/services/yard/cancel-booking.ts';
import { closeBooking } from '#lib/services/yard/close-booking.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { releaseUnits } from '#lib/services/yard/release-units.ts';
import { stepUnits } from '#lib/services/yard/step-units.ts';
import { granted } from '../granted.ts';
import { takeUnits } from '../houses/booked-house.ts';
import type { House } from './stock-house.ts';
import { compare } from './stock-house.ts';
import {
  dayOf,
  end,
  follow,
  freePiecesIn,
  freeSerials,
  HOLDING,
  lapse,
  rowsOf,
  unitOf,
  type World,
  type WorldBooking,
} from './stock-world.ts';

export type StockCommand = fc.Command<World, House>;
type Deed = (world: World, house: House) => void;

/** How often each kind of work was really done, by what it came to. */
export const tally = new Map<string, number>();

export function count(what: string): void {
  tally.set(what, (tally.get(what) ?? 0) + 1);
}

export function command(name: string, deed: Deed): StockCommand {
  return {
    check: () => true,
    run: (world, house) => {
      deed(world, house);
      compare(world, house);
    },
    toString: () => name,
  };
}

/** One of those with a unit in the state that the work is about, where there is one; sometimes, and otherwise, any. */
export function bookingAt(world: World, index: number, state?: string): WorldBooking | undefined {
  const fitting = world.bookings.filter((one) => rowsOf(world, one).some((row) => row.state === state));
  const from = fitting.length > 0 && index % 7 !== 0 ? fitting : world.bookings;
  return from[index % Math.max(1, from.length)];
}

interface Answer {
  readonly ok: boolean;
  readonly reason?: { readonly code: string };
}

/** Both say yes, or both say no. */
export function agree(what: string, { right, answer }: { readonly right: boolean; readonly answer: Answer }): void {
  count(`${what}: ${answer.ok ? 'done' : answer.reason?.code}`);
  expect(answer.ok, `${what}: ${answer.reason?.code ?? 'done'}`).toBe(right);
}

const small = (most: number) => fc.nat({ max: most });

export const book = fc
  .record({
    model: small(1),
    units: small(3),
    pieces: small(4),
    from: small(5),
    days: small(6),
    hours: small(60).map((hours) => (hours % 4 === 0 ? hours : 0)),
  })
  .map((asked) => command(`book ${JSON.stringify(asked)}`, bookDeed(asked)));

interface Asked {
  readonly model: number;
  readonly units: number;
  readonly pieces: number;
  readonly from: number;
  readonly days: number;
  readonly hours: number;
}

function bookDeed({ model, units, pieces, from, days, hours }: Asked): Deed {
  return (world, house) => {
    lapse(world);
    const startsOn = addDays(dayOf(world), from);
    const window = { starts_on: startsOn, ends_before: addDays(startsOn, days + 1) };
    const number = house.models[model] ?? '';
    const needs = [
      { model: number, count: units },
      { model: house.counted, count: pieces },
    ].filter((need) => need.count > 0);
    const free = [...freeSerials(world, window)].filter((serial) => unitOf(world, serial).model === number);
    const heldUntil = hours === 0 ? null : new Date(world.now.getTime() + hours * 3_600_000).toISOString();
    const asked = { needs, startsOn, endsBefore: window.ends_before, heldUntil, depot: '', why: 'model' };
    const answer = bookEquipment(house.context(), asked);
    const right = needs.length > 0 && free.length >= units && freePiecesIn(world, window) >= pieces;
    agree('book', { right, answer });
    if (!answer.ok) return;
    const { number: booking, serials } = answer.value;
    expect(serials.length).toBe(units);
    expect(serials.every((serial) => free.includes(serial))).toBe(true);
    const held = { booking, ...window, free_again_on: addDays(window.ends_before, world.turnaround), state: 'held' };
    world.bookings.push({ number: booking, state: 'held', heldUntil });
    for (const serial of serials) world.rows.push({ ...held, serial, outOn: null, expected: null, backOn: null });
    if (pieces > 0) world.pieces.push({ ...held, count: pieces });
  };
}

export const confirm = small(20).map((index) =>
  command(`confirm ${index}`, (world, house) => {
    const booking = bookingAt(world, index, 'held');
    if (!booking) return;
    lapse(world);
    agree('confirm', { right: booking.state === 'held', answer: confirmBooking(house.context(), booking) });
    if (booking.state !== 'held') return;
    booking.state = 'confirmed';
    booking.heldUntil = null;
  }),
);

export const cancel = small(20).map((index) =>
  command(`cancel ${index}`, (world, house) => {
    const booking = bookingAt(world, index, 'held');
    if (!booking) return;
    lapse(world);
    const right = booking.state === 'held' || booking.state === 'confirmed';
    agree('cancel', { right, answer: cancelBooking(house.context(), { number: booking.number, reason: 'model' }) });
    if (right) end(world, booking, 'cancelled');
  }),
);

export const release = small(20).map((index) =>
  command(`release ${index}`, (world, house) => {
    const booking = bookingAt(world, index, 'held');
    if (!booking) return;
    lapse(world);
    const holding = rowsOf(world, booking).filter(({ state }) => HOLDING.includes(state));
    const row = holding.find(({ state }) => state === 'held');
    if (!row) return;
    const asked = { number: booking.number, serials: [row.serial], why: 'model' };
    agree('release', { right: holding.length > 1, answer: releaseUnits(house.context(), asked) });
    if (holding.length <= 1) return;
    row.state = 'released';
    follow(world, booking);
  }),
);

/** What stands ready leaves; the rest of the booking stays: a part delivery. */
export const leave = fc.record({ index: small(20), most: small(3) }).map(({ index, most }) =>
  command(`leave ${index} ${most}`, (world, house) => {
    const booking = bookingAt(world, index, 'held');
    if (!booking) return;
    lapse(world);
    const day = dayOf(world);
    const rows = rowsOf(world, booking)
      .filter((row) => row.state === 'held' && row.starts_on <= addDays(day, 3))
      .filter(({ serial }) => unitOf(world, serial).state === 'ready')
      .slice(0, most);
    if (rows.length === 0) return;
    house.expire();
    takeUnits(house.context(), { number: booking.number, to: 'out', serials: rows.map(({ serial }) => serial) });
    for (const row of rows) {
      Object.assign(row, { state: 'out', outOn: day });
      unitOf(world, row.serial).state = 'out';
    }
    if (booking.state === 'held') booking.heldUntil = null;
    booking.state = 'out';
    follow(world, booking);
    count('leave: done');
  }),
);

export const comeBack = fc.record({ index: small(20), most: small(3) }).map(({ index, most }) =>
  command(`come back ${index} ${most}`, (world, house) => {
    const booking = bookingAt(world, index, 'out');
    const rows = booking
      ? rowsOf(world, booking)
          .filter(({ state }) => state === 'out')
          .slice(0, most)
      : [];
    if (!booking || rows.length === 0) return;
    takeUnits(house.context(), { number: booking.number, to: 'back', serials: rows.map(({ serial }) => serial) });
    for (const row of rows) {
      Object.assign(row, { state: 'back', backOn: dayOf(world) });
      unitOf(world, row.serial).state = 'back';
    }
    follow(world, booking);
    count('come back: done');
  }),
);

/** One that is out never comes back. */
export const lose = small(20).map((index) =>
  command(`lose ${index}`, (world, house) => {
    const booking = bookingAt(world, index, 'out');
    const row = booking && rowsOf(world, booking).find(({ state }) => state === 'out');
    if (!booking || !row) return;
    const context = house.context();
    context.database.db.transaction((tx) => {
      const found = granted(bookingNumbered(tx, booking.number));
      const units = unitsOfBooking(tx, found.id).filter(
        ({ unit_serial, state }) => unit_serial === row.serial && state === 'out',
      );
      granted(stepUnits(tx, { context, booking: found, units, to: 'lost', what: 'missing' }));
    });
    row.state = 'lost';
    unitOf(world, row.serial).state = 'lost';
    follow(world, booking);
    count('lose: done');
  }),
);

export const checkIn = small(20).map((index) =>
  command(`check in ${index}`, (world, house) => {
    const booking = bookingAt(world, index, 'back');
    const row = booking ? rowsOf(world, booking).find(({ state }) => state === 'back') : undefined;
    if (!booking || !row) return;
    takeUnits(house.context(), { number: booking.number, to: 'checked', serials: [row.serial] });
    row.state = 'checked';
    follow(world, booking);
    count('check in: done');
  }),
);

export const close = small(20).map((index) =>
  command(`close ${index}`, (world, house) => {
    const booking = bookingAt(world, index, 'checked');
    if (!booking) return;
    lapse(world);
    const rows = rowsOf(world, booking);
    const away = rows.some(({ state, outOn, backOn }) => state === 'swapped' && outOn !== null && backOn === null);
    const unchecked = rows.some(({ state }) => HOLDING.includes(state));
    const right = booking.state === 'back' && !away && !unchecked;
    agree('close', { right, answer: closeBooking(house.context(), booking) });
    if (right) end(world, booking, 'closed');
  }),
);

/** Time goes by: holds run out, hires become late, transfers become overdue. */
export const wait = fc.integer({ min: 3, max: 70 }).map((hours) =>
  command(`wait ${hours} hours`, (world) => {
    world.now = new Date(world.now.getTime() + hours * 3_600_000);
    count('wait: done');
  }),
);
