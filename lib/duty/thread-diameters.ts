/*
 * Diameters of a stem's thread over the range of its outside and the pitch that goes with it.
 * Invariant: where the usual pitch steps up inside the range, the dip of the diameter at the step lies inside the result.
 * Not here: the formulas of the thread (lib/engineering/thread-geometry.ts), the lead (stem-lead.ts).
 * Read next: valve-stem.ts.
 */
import { mediumPitch } from '#lib/engineering/thread-geometry.ts';
import { TRAPEZOIDAL_MEDIUM_PITCHES } from '#lib/engineering/thread-table.ts';
import type { Known, Origin } from '#lib/units/known-value.ts';
import { type Metres, metres } from '#lib/units/quantity.ts';
import { remember, type Sheet, settle, term } from './sheet.ts';

interface ThreadSize {
  readonly majorDiameter: Metres;
  readonly pitch: Metres;
}

interface Given {
  readonly majorDiameter: Known<'m'>;
  /** Follows the outside diameter unless the thread is named. */
  readonly pitch: Known<'m'>;
  readonly origin: Origin;
  readonly size: (at: ThreadSize) => number;
}

/** A finer diameter than this makes no other thread. [m] */
const HAIR = 1e-9;

export function threadAcross(sheet: Sheet, { majorDiameter, pitch, origin, size }: Given): Known<'m'> {
  const at = (d: number, p: number): number => size({ majorDiameter: metres(d), pitch: metres(p) });
  const ends = [at(majorDiameter.low, pitch.low), at(majorDiameter.high, pitch.high)];
  if (pitch.low < pitch.high) {
    for (const step of stepsWithin(majorDiameter))
      ends.push(at(step, mediumPitch(metres(step - 2 * HAIR))), at(step - HAIR, mediumPitch(metres(step))));
  }
  const range = {
    low: Math.min(...ends),
    nominal: at(majorDiameter.nominal, pitch.nominal),
    high: Math.max(...ends),
  };
  return remember(sheet, settle('m', range, origin), {
    terms: { diameter: term('d', 'outside of the thread', majorDiameter), pitch: term('P', 'pitch', pitch) },
    evaluate: (drawn) => at(drawn('diameter'), drawn('pitch')),
  });
}

function stepsWithin({ low, high }: Known<'m'>): readonly number[] {
  return TRAPEZOIDAL_MEDIUM_PITCHES.map(([from]) => from / 1000).filter((from) => from > low && from - HAIR <= high);
}
