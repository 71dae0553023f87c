/*
 * A line's duty drawn many times over: what is not known is spread between its ends, likeliest at its nominal value.
 * Invariant: seeded, so that the same line gives the same answer; every draw lies inside the interval of the duty.
 * Not here: the interval itself (assess-duty.ts), which always counts for safety.
 * Read next: replay.ts, tape.ts.
 */
import { valueAtChance } from '#lib/engineering/chance.ts';
import { seededRandom } from '#lib/kernel/random.ts';
import type { Known } from '#lib/units/known-value.ts';
import { ratio, type Unit } from '#lib/units/quantity.ts';
import { tapedDuty } from './assess-duty.ts';
import type { Direction } from './duty.ts';
import { type Replay, replayOf } from './replay.ts';
import type { ScheduleLine } from './schedule-line.ts';
import type { Site } from './site.ts';
import type { TapeInput } from './tape.ts';

export const SPREAD_FIGURES = [
  'starting, opening',
  'starting, closing',
  'running, opening',
  'running, closing',
  'never exceed, opening',
  'never exceed, closing',
  'turns',
] as const;
export type SpreadFigure = (typeof SPREAD_FIGURES)[number];

export interface Percentiles {
  readonly p5: number;
  readonly p50: number;
  readonly p95: number;
}

export interface FigureSpread extends Percentiles {
  /** Lowest and highest of the draws. */
  readonly least: number;
  readonly most: number;
  /** The interval with its basis: no draw lies outside. */
  readonly interval: Known<Unit>;
}

/** The input that the spread of the starting torque hangs on most. */
export interface MainContributor {
  readonly input: TapeInput;
  /** Share of the variance of the starting torque that goes when this input is known. [1] */
  readonly share: number;
  /** The starting torque were this input at its likely value. */
  readonly ifKnown: Percentiles;
}

export interface SampledDuty {
  readonly runs: number;
  readonly seed: number;
  readonly figures: Readonly<Record<SpreadFigure, FigureSpread>>;
  /** The direction whose starting torque may be the higher. */
  readonly worseDirection: Direction;
  readonly main: MainContributor | null;
  /** Share of the draws in which the valve starts, either way, below what it must never see. */
  readonly startsBelowCeiling: number;
}

interface Asked {
  readonly line: ScheduleLine;
  readonly site: Site;
  readonly runs: number;
  readonly seed: number;
}

type Intervals = Readonly<Record<SpreadFigure, Known<Unit>>>;

export function sampleDuty({ line, site, runs, seed }: Asked): SampledDuty {
  const { tape, opening, closing, turns } = tapedDuty({ line, site });
  const intervals: Intervals = {
    'starting, opening': opening.starting,
    'starting, closing': closing.starting,
    'running, opening': opening.running,
    'running, closing': closing.running,
    'never exceed, opening': opening.neverExceed.torque,
    'never exceed, closing': closing.neverExceed.torque,
    turns,
  };
  const replay = replayOf({ tape, asked: SPREAD_FIGURES.map((figure) => intervals[figure]) });
  const draws = drawInputs({ replay, runs, seed });
  const rows = replayed({ replay, runs, point: (input, run) => draws[input]?.[run] ?? 0 });
  const drawn = new Map(replay.inputs.map(({ value }, index) => [value, draws[index]]));
  const worseDirection = closing.starting.high > opening.starting.high ? 'closing' : 'opening';
  const worse = worseDirection === 'opening' ? opening.starting : closing.starting;
  return {
    runs,
    seed,
    figures: spreads(intervals, rows),
    worseDirection,
    main: mainContributor({ replay: replayOf({ tape, asked: [worse] }), drawn: (value) => drawn.get(value), runs }),
    startsBelowCeiling: rows.filter(startsBelowCeiling).length / Math.max(1, rows.length),
  };
}

/** One run draws every input of the whole line once; an input is then the same in all that hangs on it. */
function drawInputs({
  replay,
  runs,
  seed,
}: {
  readonly replay: Replay;
  readonly runs: number;
  readonly seed: number;
}): readonly Float64Array[] {
  const random = seededRandom(seed);
  return replay.inputs.map(({ value }) =>
    Float64Array.from({ length: runs }, () => valueAtChance({ value, chance: ratio(random()) })),
  );
}

function replayed({
  replay,
  runs,
  point,
}: {
  readonly replay: Replay;
  readonly runs: number;
  readonly point: (input: number, run: number) => number;
}): readonly (readonly number[])[] {
  return Array.from({ length: runs }, (_, run) => replay.at((input) => point(input, run)));
}

function spreads(
  intervals: Intervals,
  rows: readonly (readonly number[])[],
): Readonly<Record<SpreadFigure, FigureSpread>> {
  const of = (figure: SpreadFigure): FigureSpread => {
    const column = SPREAD_FIGURES.indexOf(figure);
    const values = rows.map((row) => row[column] ?? 0);
    const least = values.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY);
    const most = values.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY);
    return { interval: intervals[figure], ...percentiles(values), least, most };
  };
  return {
    'starting, opening': of('starting, opening'),
    'starting, closing': of('starting, closing'),
    'running, opening': of('running, opening'),
    'running, closing': of('running, closing'),
    'never exceed, opening': of('never exceed, opening'),
    'never exceed, closing': of('never exceed, closing'),
    turns: of('turns'),
  };
}

/** Each input in turn is held at its likely value while the others stay as they were drawn. */
function mainContributor({
  replay,
  drawn,
  runs,
}: {
  readonly replay: Replay;
  readonly drawn: (value: Known<Unit>) => Float64Array | undefined;
  readonly runs: number;
}): MainContributor | null {
  const columns = replay.inputs.map(({ value }) => drawn(value));
  const starting = (held: number | null): readonly number[] =>
    replayed({
      replay,
      runs,
      point: (input, run) =>
        input === held ? (replay.inputs[input]?.value.nominal ?? 0) : (columns[input]?.[run] ?? 0),
    }).map(([value]) => value ?? 0);
  const whole = variance(starting(null));
  if (!(whole > 0)) return null;
  let best: MainContributor | null = null;
  for (const [index, input] of replay.inputs.entries()) {
    const values = starting(index);
    const share = 1 - variance(values) / whole;
    if (share > (best?.share ?? 0)) best = { input, share, ifKnown: percentiles(values) };
  }
  return best;
}

/** Between the two nearest of the sorted draws, in proportion. */
function percentiles(values: readonly number[]): Percentiles {
  const sorted = Float64Array.from(values).sort();
  const at = (share: number): number => {
    const place = share * (sorted.length - 1);
    const [below, above] = [sorted[Math.floor(place)] ?? 0, sorted[Math.ceil(place)] ?? 0];
    return below + (above - below) * (place - Math.floor(place));
  };
  return { p5: at(0.05), p50: at(0.5), p95: at(0.95) };
}

function variance(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / Math.max(1, values.length);
}

function startsBelowCeiling(row: readonly number[]): boolean {
  const at = (figure: SpreadFigure): number => row[SPREAD_FIGURES.indexOf(figure)] ?? 0;
  return (
    at('starting, opening') <= at('never exceed, opening') && at('starting, closing') <= at('never exceed, closing')
  );
}
