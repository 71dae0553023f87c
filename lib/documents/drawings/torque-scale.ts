/*
 * The one torque scale of a ladder: linear, square-root or logarithmic by the range it must show, with round ticks.
 * Invariant: monotone; a torque beyond the top is put at the top and said to be off the scale.
 * Not here: labels and bars (torque-ladder.ts).
 * Read next: torque-ladder.ts.
 */
import type { UnitSystem } from '#lib/units/format-quantity.ts';

export interface TorqueScale {
  readonly kind: 'linear' | 'square root' | 'logarithmic';
  /** Lowest and highest torque drawn. [N·m] */
  readonly from: number;
  readonly to: number;
  /** Share of the height, 0 at the bottom to 1 at the top. */
  readonly share: (torque: number) => number;
  readonly ticks: readonly { readonly torque: number; readonly label: string }[];
  readonly unit: 'N·m' | 'lbf·ft';
}

/** 1 lbf·ft in N·m: 0.3048 m × 4.4482216152605 N (exact by definition of the pound-force and the foot). */
const NEWTON_METRES_PER_POUND_FOOT = 1.3558179483314;

/** Linear up to this ratio of top to smallest need, square root up to the next, logarithmic beyond: where bars stay taller than a line. */
const LINEAR_UP_TO = 8;
const SQUARE_ROOT_UP_TO = 70;

export function torqueScale(asked: {
  readonly values: readonly number[];
  readonly smallest: number;
  readonly system: UnitSystem;
}): TorqueScale {
  const top = Math.max(1, ...asked.values.filter((value) => Number.isFinite(value))) * 1.06;
  const smallest = Math.min(top, Math.max(asked.smallest, top / 5000));
  const ratio = top / smallest;
  const kind = ratio <= LINEAR_UP_TO ? 'linear' : ratio <= SQUARE_ROOT_UP_TO ? 'square root' : 'logarithmic';
  const from = kind === 'logarithmic' ? smallest / 1.6 : 0;
  const share = (torque: number): number => {
    const inside = Math.min(top, Math.max(from, torque));
    if (kind === 'linear') return inside / top;
    if (kind === 'square root') return Math.sqrt(inside / top);
    return Math.log(inside / from) / Math.log(top / from);
  };
  return {
    kind,
    from,
    to: top,
    share,
    ticks: ticksOf({ kind, from, to: top, share, system: asked.system }),
    unit: asked.system === 'si' ? 'N·m' : 'lbf·ft',
  };
}

/** Round values in the unit shown that stand at least 7 % of the height apart; the roundest are kept first. */
function ticksOf(scale: {
  readonly kind: TorqueScale['kind'];
  readonly from: number;
  readonly to: number;
  readonly share: (torque: number) => number;
  readonly system: UnitSystem;
}): TorqueScale['ticks'] {
  const perUnit = scale.system === 'si' ? 1 : NEWTON_METRES_PER_POUND_FOOT;
  const highest = scale.to / perUnit;
  const candidates = scale.kind === 'linear' ? evenTicks(highest) : roundTicks(highest);
  const kept: number[] = [];
  const fits = (value: number) =>
    value * perUnit >= scale.from &&
    value <= highest &&
    kept.every((other) => Math.abs(scale.share(value * perUnit) - scale.share(other * perUnit)) >= 0.07);
  for (const value of candidates) if (fits(value)) kept.push(value);
  return kept.sort((a, b) => a - b).map((value) => ({ torque: value * perUnit, label: tickLabel(value) }));
}

/** Multiples of the smallest step of 1, 2 or 5 times a power of ten that needs no more than nine of them. */
function evenTicks(highest: number): readonly number[] {
  const power = 10 ** Math.floor(Math.log10(highest / 9));
  const step =
    [1, 2, 5, 10].map((factor) => factor * power).find((candidate) => highest / candidate <= 9) ?? power * 10;
  return Array.from({ length: Math.floor(highest / step) + 1 }, (_, index) => Number((index * step).toPrecision(12)));
}

/** 1 and 5, then 2, then 3 and 7 times powers of ten, after zero. */
function roundTicks(highest: number): readonly number[] {
  const decades: number[] = [];
  for (let decade = 10 ** Math.floor(Math.log10(highest)); decade > highest / 5000; decade /= 10)
    decades.push(Number(decade.toPrecision(3)));
  return [
    0,
    ...[[1, 5], [2], [3, 7]].flatMap((factors) =>
      decades.flatMap((decade) => factors.map((factor) => Number((factor * decade).toPrecision(3)))),
    ),
  ];
}

function tickLabel(value: number): string {
  return value >= 1000
    ? `${Math.floor(value / 1000)} ${String(Math.round(value % 1000)).padStart(3, '0')}`
    : String(Number(value.toPrecision(3)));
}
