/*
 * A reference model of stock and bookings: plain rows, and availability counted day by day with nothing of lib/stock.
 * It knows what the yard knows: who holds what from when to when, what is out, late, lost, held back or between depots.
 */
import { addDays, type DateRange } from '#lib/kernel/date-range.ts';

export interface WorldUnit {
  readonly serial: string;
  readonly model: string;
  depot: string;
  bay: string;
  state: string;
  readonly dueOn: string | null;
}

export interface WorldRow {
  readonly booking: string;
  readonly serial: string;
  starts_on: string;
  ends_before: string;
  free_again_on: string;
  state: string;
  outOn: string | null;
  expected: string | null;
  backOn: string | null;
}

export interface WorldBooking {
  readonly number: string;
  state: string;
  heldUntil: string | null;
}

export interface World {
  now: Date;
  readonly turnaround: number;
  readonly units: WorldUnit[];
  readonly bookings: WorldBooking[];
  readonly rows: WorldRow[];
  readonly pieces: {
    readonly booking: string;
    count: number;
    starts_on: string;
    ends_before: string;
    free_again_on: string;
    state: string;
  }[];
  readonly transfers: {
    readonly number: string;
    readonly serial: string;
    readonly sentOn: string;
    readonly dueOn: string;
    readonly to: string;
    open: boolean;
  }[];
  /** Counted pieces by depot. */
  readonly shelves: Map<string, number>;
}

export const HOLDING = ['held', 'allocated', 'picked', 'out', 'back'];
const HIREABLE = ['ready', 'out', 'back', 'on the way'];

export function dayOf({ now }: World): string {
  return now.toISOString().slice(0, 10);
}

/** Holds that ran out are over, whether or not anybody has written that down. */
export function lapse(world: World): void {
  for (const booking of world.bookings) {
    if (booking.state !== 'held' || booking.heldUntil === null || new Date(booking.heldUntil) > world.now) continue;
    end(world, booking, 'lapsed');
  }
}

export function end(world: World, booking: WorldBooking, state: 'lapsed' | 'cancelled' | 'closed'): void {
  booking.state = state;
  for (const row of rowsOf(world, booking)) if (HOLDING.includes(row.state)) row.state = 'released';
  for (const pieces of world.pieces)
    if (pieces.booking === booking.number && HOLDING.includes(pieces.state))
      pieces.state = state === 'closed' ? 'checked' : 'released';
}

export function rowsOf(world: World, booking: WorldBooking): readonly WorldRow[] {
  return world.rows.filter((row) => row.booking === booking.number);
}

/** A booking is where its units are. */
export function follow(world: World, booking: WorldBooking): void {
  const states = rowsOf(world, booking)
    .map(({ state }) => state)
    .filter((state) => state !== 'swapped' && state !== 'released');
  if (['closed', 'cancelled', 'lapsed'].includes(booking.state) || states.length === 0) return;
  const inHouse = states.filter((state) => ['held', 'allocated', 'picked'].includes(state));
  const wasOut = booking.state === 'out' || booking.state === 'back';
  if (
    states.includes('out') ||
    (inHouse.length < states.length && inHouse.length > 0) ||
    (wasOut && inHouse.length > 0)
  )
    booking.state = 'out';
  else if (inHouse.length === 0) booking.state = 'back';
}

/** Each day on which a row has its unit, its turnaround included; the years are few, so days are simply listed. */
export function daysOf(world: World, row: WorldRow): readonly string[] {
  if (!HOLDING.includes(row.state)) return [];
  const today = dayOf(world);
  let first = row.starts_on;
  let free = row.ends_before;
  const later = (day: string) => {
    if (day > free) free = day;
  };
  if (row.outOn !== null && row.outOn < first) first = row.outOn;
  if (row.state === 'out') {
    later(addDays(today, 1));
    if (row.expected !== null) later(addDays(row.expected, 1));
  }
  if (row.state === 'back' && row.backOn !== null) later(addDays(row.backOn, 1));
  free = addDays(free, world.turnaround);
  later(row.free_again_on);
  return listed({ starts_on: first, ends_before: free });
}

function transferDays(world: World, { sentOn, dueOn }: World['transfers'][number]): readonly string[] {
  const tomorrow = addDays(dayOf(world), 1);
  return listed({ starts_on: sentOn, ends_before: dueOn > tomorrow ? dueOn : tomorrow });
}

export function listed({ starts_on, ends_before }: DateRange): readonly string[] {
  const days: string[] = [];
  for (let day = starts_on; day < ends_before; day = addDays(day, 1)) days.push(day);
  return days;
}

/** Serial numbers that could be had over the whole window; some rows may be looked past. */
export function freeSerials(
  world: World,
  window: DateRange,
  past: (row: WorldRow) => boolean = () => false,
): ReadonlySet<string> {
  const asked = new Set(listed({ ...window, ends_before: addDays(window.ends_before, world.turnaround) }));
  const taken = new Set<string>();
  for (const row of world.rows)
    if (!past(row) && daysOf(world, row).some((day) => asked.has(day))) taken.add(row.serial);
  for (const transfer of world.transfers)
    if (transfer.open && transferDays(world, transfer).some((day) => asked.has(day))) taken.add(transfer.serial);
  return new Set(
    world.units
      .filter(
        ({ state, dueOn, serial }) =>
          HIREABLE.includes(state) && !(dueOn !== null && dueOn < window.ends_before) && !taken.has(serial),
      )
      .map(({ serial }) => serial),
  );
}

export function freePiecesIn(world: World, window: DateRange, besideBooking = ''): number {
  const days = listed({ ...window, ends_before: addDays(window.ends_before, world.turnaround) });
  const held = days.map((day) =>
    world.pieces.reduce(
      (sum, one) =>
        sum +
        (HOLDING.includes(one.state) && one.booking !== besideBooking && one.starts_on <= day && day < one.free_again_on
          ? one.count
          : 0),
      0,
    ),
  );
  return Math.max(0, stockOf(world) - Math.max(0, ...held));
}

export function stockOf({ shelves }: World): number {
  return [...shelves.values()].reduce((sum, count) => sum + count, 0);
}

export function unitOf(world: World, serial: string): WorldUnit {
  const unit = world.units.find((one) => one.serial === serial);
  if (!unit) throw new Error(`The model has no unit ${serial}.`);
  return unit;
}
