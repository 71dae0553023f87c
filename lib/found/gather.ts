/*
 * One value of a line out of the readings of its visits: the newest of each valve, covering all valves that the line stands for.
 * Invariant: a line of several valves takes a reading only where each of them has one; what does not age and was read twice differently is covered and told.
 * Not here: weighing it against the list (known-valve.ts).
 * Read next: known-valve.ts.
 */
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Found } from './found.ts';

export interface Gathered<U extends Unit> {
  readonly value: Known<U>;
  /** The oldest day that the value rests on. */
  readonly on: IsoDate;
  /** Visits to one valve read it differently. */
  readonly visits: 'agree' | 'disagree';
}

interface Reading<U extends Unit> {
  readonly value: Known<U>;
  readonly on: IsoDate;
}

export function gather<U extends Unit>(asked: {
  readonly qty: number;
  /** The newest first. */
  readonly records: readonly Found[];
  readonly pick: (found: Found) => Known<U> | undefined;
  /** Ratio from which two visits disagree; null where a newer reading simply replaces an older one. */
  readonly slack: number | null;
}): Gathered<U> | 'of some valves' | null {
  const { qty, records, pick, slack } = asked;
  const byValve = new Map<number, Reading<U>[]>();
  for (const found of records) {
    const value = pick(found);
    if (value === undefined || found.number > qty) continue;
    const readings = byValve.get(found.number) ?? [];
    readings.push({ value, on: found.on });
    byValve.set(found.number, readings);
  }
  if (byValve.size === 0) return null;
  if (byValve.size < qty) return 'of some valves';
  const valves = [...byValve.values()].map((readings) => ofOneValve(readings, slack));
  const [first, ...others] = valves.flatMap(({ used }) => used);
  if (first === undefined) return null;
  const visits = valves.some(({ used }) => used.length > 1) ? 'disagree' : 'agree';
  return { ...others.reduce(cover, first), visits };
}

/** The newest reading, or all where they contradict one another. */
function ofOneValve<U extends Unit>(
  readings: readonly Reading<U>[],
  slack: number | null,
): { readonly used: readonly Reading<U>[] } {
  const [newest] = readings;
  if (newest === undefined || slack === null) return { used: readings.slice(0, 1) };
  const disagrees = readings.some(
    ({ value }) => value.low > newest.value.high * slack || value.high < newest.value.low / slack,
  );
  return { used: disagrees ? readings : [newest] };
}

/** A range that holds both and the older day; the first stays the likely one. */
function cover<U extends Unit>(one: Reading<U>, other: Reading<U>): Reading<U> {
  const { value } = one;
  const low = Math.min(value.low, other.value.low);
  const high = Math.max(value.high, other.value.high);
  const source = `${value.source} ${other.value.source}`;
  return {
    value: known(value.unit, { low, nominal: value.nominal, high }, { basis: 'measured', source }),
    on: [one.on, other.on].sort()[0] ?? one.on,
  };
}
