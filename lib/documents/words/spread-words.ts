/*
 * The spread of a duty by chance in words: what it is, its rows, and what it hangs on most.
 * Invariant: never told without saying that the whole range counts for safety.
 * Not here: drawing it (../../duty/sample-duty.ts).
 * Read next: ../../duty/line-spread.ts.
 */
import type { LineSpread, PlainContributor, PlainSpread } from '#lib/duty/line-spread.ts';
import { formatQuantity, formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';
import { known } from '#lib/units/known-value.ts';

export interface SpreadRow {
  readonly name: string;
  readonly unit: 'N·m' | 'turn';
  readonly spread: PlainSpread;
}

export function spreadRows(spread: LineSpread): readonly SpreadRow[] {
  const { torque_start_nm: start, torque_run_nm: run, never_exceed_nm: limit, turns } = spread;
  return [
    { name: 'Torque to start opening', unit: 'N·m', spread: start.opening },
    { name: 'Torque to start closing', unit: 'N·m', spread: start.closing },
    { name: 'Torque while opening', unit: 'N·m', spread: run.opening },
    { name: 'Torque while closing', unit: 'N·m', spread: run.closing },
    { name: 'Never above, opening', unit: 'N·m', spread: limit.opening },
    { name: 'Never above, closing', unit: 'N·m', spread: limit.closing },
    { name: 'Turns for a stroke', unit: 'turn', spread: turns },
  ];
}

export function whatTheSpreadIs({ runs }: Pick<LineSpread, 'runs'>): string {
  return `What is not known was drawn ${runs} times between its ends, likeliest at its likely value, each thing for itself. Half of the draws lie below the middle value, nine in ten between the outer two. It says where the answer probably lies if the ends are right; for safety the whole range counts.`;
}

/** Two sentences at most; says so where nothing is open. */
export function whatItHangsOn(spread: LineSpread, system: UnitSystem): string {
  const { main, worse_direction, torque_start_nm } = spread;
  if (main === null) return 'The torque to start has no spread: everything it follows from is taken as one value.';
  const share = `${(main.share_of_variance * 100).toFixed(0)} %`;
  const between = ({ p5, p95 }: { readonly p5: number; readonly p95: number }): string =>
    p5 === p95 ? `near ${print(p5, system)}` : `between ${print(p5, system)} and ${print(p95, system)}`;
  const size = main.picks || isCoefficient(main) ? '' : `, ${rangeOf(main, system)}`;
  return `The torque to start ${worse_direction} hangs most on this: ${main.name}${size} (${main.basis}). ${main.picks ? 'With the heavier case taken' : 'With it known, as is likely'}, ${share} of the variance goes and nine in ten draws lie ${between(main.torque_start_if_known_nm)} instead of ${between(torque_start_nm[worse_direction])}. ${main.source}`;
}

/** One line of text for a terminal. */
export function spreadLine(spread: LineSpread, system: UnitSystem): string {
  const { worse_direction, torque_start_nm, turns, runs } = spread;
  const nineInTen = ({ p5, p50, p95 }: PlainSpread, unit: 'N·m' | 'turn'): string => {
    const text = (value: number): string => formatQuantity({ value, unit, system });
    return p5 === p95 ? text(p50) : `${text(p5)} to ${text(p95)}, half below ${text(p50)}`;
  };
  return `Nine in ten of ${runs} draws: to start ${worse_direction} ${nineInTen(torque_start_nm[worse_direction], 'N·m')}; ${nineInTen(turns, 'turn')}.`;
}

/** The share of draws that start below the ceiling. */
export function startsBelowText({ starts_below_ceiling: share }: LineSpread): string {
  if (share >= 1) return 'In every draw the valve starts below what it must never see.';
  const text = share > 0.99 ? 'more than 99 %' : share < 0.01 ? 'less than 1 %' : `${(share * 100).toFixed(0)} %`;
  return `In ${text} of the draws the valve starts, either way, below what it must never see; in the others it does not move at the torque allowed.`;
}

function print(value: number, system: UnitSystem): string {
  return formatQuantity({ value, unit: 'N·m', system });
}

/** A coefficient with a unit of its own (newtons for each metre) tells its range in its source. */
function isCoefficient({ unit, high }: PlainContributor): boolean {
  return unit === '1' && high >= 1000;
}

function rangeOf(main: PlainContributor, system: UnitSystem): string {
  return formatRange(known(main.unit, main, { basis: 'assumed', source: main.source }), system);
}
