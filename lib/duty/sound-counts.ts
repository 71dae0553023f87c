/*
 * Judges the whole numbers and years of a line: quantity, strokes, starts, spokes, working order, age, last operated.
 * Invariant: a count that is none is set aside with a finding that names its column, value and range.
 * Not here: quantities (sound-line.ts).
 * Read next: sound-line.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import type { Fact } from '#lib/units/known-value.ts';
import { type CountColumn, PLAUSIBLE_COUNTS } from './plausible-values.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { without } from './without.ts';

/** Years that an age may have, and calendar years. House rule. */
const YEARS = { most: 300, first: 1800, last: 2200 } as const;

export function soundCounts({
  line,
  given,
  findings,
}: {
  /** The line with quantity and strokes already whole. */
  readonly line: ScheduleLine;
  readonly given: ScheduleLine;
  readonly findings: Finding[];
}): ScheduleLine {
  const isCount = (value: number | undefined, column: CountColumn): boolean => {
    const { label, possible } = PLAUSIBLE_COUNTS[column];
    if (value === undefined || (Number.isInteger(value) && value >= possible[0] && value <= possible[1])) return true;
    findings.push(
      countFinding(
        column,
        `${label} ${value} cannot be meant: plausible is a whole number from ${possible[0]} to ${possible[1]}.`,
      ),
    );
    return false;
  };
  const isYears = (value: Fact<number> | undefined, column: string, label: string): boolean => {
    if (value === undefined || areYears(value.value)) return true;
    findings.push(
      countFinding(
        column,
        `${label} ${value.value} cannot be meant: plausible is 0 to ${YEARS.most} years, or a year from ${YEARS.first} to now.`,
      ),
    );
    return false;
  };
  isCount(given.qty, 'qty');
  isCount(given.strokes, 'strokes');
  const { stem, interface: grip, place, state } = line;
  const aged = isYears(state.age, 'age', 'Age') ? state : without(state, 'age');
  const soundYears = isYears(state.lastOperated, 'last_operated', 'Last operated')
    ? aged
    : without(aged, 'lastOperated');
  return {
    ...line,
    stem: isCount(stem.threadStarts?.value, 'thread_starts') ? stem : without(stem, 'threadStarts'),
    interface: isCount(grip.wheelSpokes?.value, 'wheel_spokes') ? grip : without(grip, 'wheelSpokes'),
    place: isCount(place.placeOrder, 'place_order') ? place : without(place, 'placeOrder'),
    state: soundYears,
  };
}

function areYears(value: number): boolean {
  return Number.isFinite(value) && value >= 0 && (value <= YEARS.most || (value >= YEARS.first && value <= YEARS.last));
}

function countFinding(column: string, sentence: string): Finding {
  return {
    id: 'value-set-aside',
    severity: 'warning',
    about: [column],
    sentence: `${sentence} It is set aside; check it.`,
    source: 'house rule',
  };
}

export function wholeOr(value: number, fallback: number): number {
  return Number.isFinite(value) && value >= 1 ? Math.floor(value) : fallback;
}
