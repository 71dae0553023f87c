/*
 * A drawn duty as it leaves the house: plain numbers with their unit in the key.
 * Invariant: percentiles lie inside the ends of the interval that stand beside them.
 * Not here: drawing (sample-duty.ts), the words (lib/documents/words/spread-words.ts).
 * Read next: sample-duty.ts.
 */
import type { Basis } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Direction } from './duty.ts';
import type { FigureSpread, Percentiles, SampledDuty } from './sample-duty.ts';

export interface PlainSpread extends Percentiles {
  readonly low: number;
  readonly high: number;
}

type EachWay = Readonly<Record<Direction, PlainSpread>>;

export interface LineSpread {
  readonly runs: number;
  readonly seed: number;
  readonly torque_start_nm: EachWay;
  readonly torque_run_nm: EachWay;
  readonly never_exceed_nm: EachWay;
  readonly turns: PlainSpread;
  readonly worse_direction: Direction;
  readonly starts_below_ceiling: number;
  readonly main: PlainContributor | null;
}

export interface PlainContributor {
  readonly name: string;
  readonly picks: boolean;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly unit: Unit;
  readonly basis: Basis;
  readonly source: string;
  readonly share_of_variance: number;
  readonly torque_start_if_known_nm: Percentiles;
}

export function lineSpread({ runs, seed, figures, worseDirection, startsBelowCeiling, main }: SampledDuty): LineSpread {
  return {
    runs,
    seed,
    torque_start_nm: { opening: spread(figures['starting, opening']), closing: spread(figures['starting, closing']) },
    torque_run_nm: { opening: spread(figures['running, opening']), closing: spread(figures['running, closing']) },
    never_exceed_nm: {
      opening: spread(figures['never exceed, opening']),
      closing: spread(figures['never exceed, closing']),
    },
    turns: spread(figures.turns),
    worse_direction: worseDirection,
    starts_below_ceiling: startsBelowCeiling,
    main: main && mainAnswer(main),
  };
}

function spread({ interval, ...drawn }: FigureSpread): PlainSpread {
  return { low: interval.low, ...percentiles(drawn), high: interval.high };
}

function percentiles({ p5, p50, p95 }: Percentiles): Percentiles {
  return { p5, p50, p95 };
}

function mainAnswer({ input, share, ifKnown }: NonNullable<SampledDuty['main']>): PlainContributor {
  const { low, nominal, high, unit, basis, source } = input.value;
  return {
    name: input.name,
    picks: input.picks,
    low,
    nominal,
    high,
    unit,
    basis,
    source,
    share_of_variance: share,
    torque_start_if_known_nm: ifKnown,
  };
}
