/*
 * Time of all strokes of one visit at a valve.
 * Invariant: the first stroke opens or closes alike, and an odd one is counted as the slower.
 * Not here: time of one stroke (../cores/core-figures.ts) and of mounting (chain-times.ts).
 * Read next: chain-times.ts.
 */
import { timeWithRests } from '#lib/engineering/duty-cycle.ts';
import type { CoreDirection, CoreFigures, LineFacts } from '#lib/rules/facts.ts';
import { type Seconds, seconds } from '#lib/units/quantity.ts';

/** Strokes of a visit each way; the first one opens or closes alike, and an odd one is counted as the slower. */
export function strokesEachWay(strokes: number): { readonly both: number; readonly odd: number } {
  return { both: Math.floor(strokes / 2), odd: strokes % 2 };
}

/** Time of all strokes of a visit with slow ends, to and fro and rests. */
export function visitStrokeTime({
  facts,
  figures,
  continuousRun,
  restAfterRun,
}: {
  readonly facts: LineFacts;
  readonly figures: CoreFigures;
  readonly continuousRun: Seconds;
  readonly restAfterRun: Seconds;
}): Seconds {
  const nominal = (way: CoreDirection): number => (way.strokeTime.low + way.strokeTime.high) / 2;
  const { both, odd } = strokesEachWay(facts.duty.strokes);
  const opening = nominal(figures.opening);
  const closing = nominal(figures.closing);
  const running = seconds(both * (opening + closing) + odd * Math.max(opening, closing));
  return timeWithRests({ running, continuousRun, restAfterRun });
}
