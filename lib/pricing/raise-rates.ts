/*
 * Raises a rate by some per cent and rounds it to a step, away from nought where it lies in the middle.
 * Invariant: a rate that is not nought never becomes nought or less; equal rates stay equal.
 * Not here: which models are raised, and from when (lib/services/equipment/raise-rates.ts).
 * Read next: best-rate.ts.
 */
import { type Minor, roundMinor, toMinor } from '#lib/money/money.ts';

interface Raise {
  readonly percent: number;
  /** Rates become whole multiples of this. */
  readonly step_minor: number;
}

export function raiseRate(rate: Minor, { percent, step_minor }: Raise): Minor {
  if (rate === 0) return rate;
  const step = Math.max(1, Math.round(step_minor));
  const steps = roundMinor((rate * (100 + percent)) / 100 / step);
  return toMinor(Math.max(1, steps) * step);
}
