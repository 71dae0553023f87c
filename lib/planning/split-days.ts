/*
 * Splits the work of one crew into its days, in working order: days are filled, and spread further where a day would pass the vibration limit.
 * Invariant: every valve is on one day, in working order; there are never more days than the site has.
 * Not here: what a day comes to (crew-days.ts) and who works where (lib/fleet).
 * Read next: crew-days.ts.
 */
export interface Portion {
  readonly qty: number;
  /** Seconds a valve, moving included. */
  readonly time: number;
  /** Vibration dose a valve, a²·t, with the longest strokes. */
  readonly dose: number;
}

export interface DayCaps {
  readonly days: number;
  /** Seconds. */
  readonly shift: number;
  /** Dose that one person may have in a day. */
  readonly dose: number;
}

export interface Split<One> {
  readonly days: readonly (readonly One[])[];
  /** Days that filling each shift would take. */
  readonly filled: number;
}

/** Halvings until a bisected cap no longer changes what fits. */
const HALVINGS = 48;

export function splitDays<One extends Portion>(portions: readonly One[], caps: DayCaps): Split<One> {
  const time = shiftThatFits(portions, caps);
  const full = fillDays(portions, { time, dose: Number.POSITIVE_INFINITY });
  const worst = highestDose(full);
  if (worst <= caps.dose) return { days: full, filled: full.length };
  const capped = fillDays(portions, { time, dose: caps.dose });
  const holds = capped.length <= caps.days && highestDose(capped) <= caps.dose;
  const days = holds ? capped : evenly({ portions, caps, time, from: full });
  return { days, filled: full.length };
}

/** Days that filling takes with so much a day. A valve that is too much for any day has one of its own. */
export function fillDays<One extends Portion>(
  portions: readonly One[],
  room: { readonly time: number; readonly dose: number },
): readonly (readonly One[])[] {
  const days: One[][] = [];
  let [day, time, dose]: [One[], number, number] = [[], 0, 0];
  for (const portion of portions) {
    let left = portion.qty;
    while (left > 0) {
      const fits = Math.min(left, timesIn(room.time - time, portion.time), timesIn(room.dose - dose, portion.dose));
      if (fits < 1 && day.length > 0) {
        days.push(day);
        [day, time, dose] = [[], 0, 0];
        continue;
      }
      const qty = Math.max(1, fits);
      day.push({ ...portion, qty });
      left -= qty;
      time += qty * portion.time;
      dose += qty * portion.dose;
    }
  }
  return day.length === 0 ? days : [...days, day];
}

function timesIn(room: number, each: number): number {
  return each <= 0 ? Number.MAX_SAFE_INTEGER : Math.floor(room / each + 1e-9);
}

/** The shift, or the least that is longer with which the valves, none left half done, go into the days. */
function shiftThatFits(portions: readonly Portion[], { days, shift }: DayCaps): number {
  const fits = (time: number): boolean => fillDays(portions, { time, dose: Number.POSITIVE_INFINITY }).length <= days;
  if (fits(shift)) return shift;
  return leastThat({ low: shift, high: portions.reduce((sum, { qty, time }) => sum + qty * time, 0), holds: fits });
}

interface Even<One> {
  readonly portions: readonly One[];
  readonly caps: DayCaps;
  readonly time: number;
  readonly from: readonly (readonly One[])[];
}

/** The days whose worst is least, where the limit cannot be kept. */
function evenly<One extends Portion>({ portions, caps, time, from }: Even<One>): readonly (readonly One[])[] {
  const dose = leastThat({
    low: caps.dose,
    high: highestDose(from),
    holds: (cap) => fillDays(portions, { time, dose: cap }).length <= caps.days,
  });
  return fillDays(portions, { time, dose });
}

function leastThat(ask: {
  readonly low: number;
  readonly high: number;
  readonly holds: (value: number) => boolean;
}): number {
  let { low, high } = ask;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (ask.holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

export function highestDose(days: readonly (readonly Portion[])[]): number {
  return Math.max(0, ...days.map((day) => day.reduce((sum, { qty, dose }) => sum + qty * dose, 0)));
}
