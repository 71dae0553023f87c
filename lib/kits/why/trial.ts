/*
 * One change worth trying for a line: with a number that is looked for, or without; and the ways to look for it.
 * Invariant: a change may be laid on any facts of the line, so that two of them go together.
 * Not here: which changes there are (repair-trials.ts, place-trials.ts).
 * Read next: repair-trials.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { placeOf } from '#lib/rules/place-facts.ts';
import type { RepairStep } from './repair-step.ts';

export interface Change {
  readonly to: (facts: LineFacts) => LineFacts;
  /** The whole sentence, and what must hold as a part of one. */
  readonly sentence: string;
  readonly clause: string;
  /** How it is carried out; absent where that is for somebody else to do. */
  readonly steps?: readonly RepairStep[];
}

export interface Trial {
  readonly id: string;
  readonly cost?: string;
  readonly wishes?: 'none';
  readonly at: (value: number) => Change;
  /** Looks for the number nearest to what holds now at which it works. */
  readonly find: (works: (value: number) => boolean) => number | null;
  /** The number at which it helps most. */
  readonly widest: number;
}

export const TRIED = { basis: 'assumed', source: 'A change tried out as a repair.' } as const;

export function fixed(
  trial: Change & { readonly id: string; readonly cost?: string; readonly wishes?: 'none' },
): Trial {
  const { id, cost, wishes, ...change } = trial;
  return {
    id,
    ...(cost === undefined ? {} : { cost }),
    ...(wishes === undefined ? {} : { wishes }),
    at: () => change,
    find: (works) => (works(0) ? 0 : null),
    widest: 0,
  };
}

export function changed(
  facts: LineFacts,
  change: { readonly line?: ScheduleLine; readonly duty?: Duty; readonly site?: Site },
): LineFacts {
  const line = change.line ?? facts.line;
  const duty = change.duty ?? facts.duty;
  const site = change.site ?? facts.site;
  return { line, duty, site, place: placeOf({ line, duty, site }) };
}

interface Narrowing {
  readonly low: number;
  readonly high: number;
  readonly works: (value: number) => boolean;
}

/** Least value, up to a step, that works; null when not even the highest does. */
export function leastThat({ low, high, step, works }: Narrowing & { readonly step: number }): number | null {
  if (!works(high)) return null;
  let bad = low;
  let good = high;
  while (good - bad > step) {
    const middle = (good + bad) / 2;
    if (works(middle)) good = middle;
    else bad = middle;
  }
  return Math.ceil(good / step - 1e-9) * step;
}

/** Each share that is tried is this part of the one before. */
const COARSE = 0.6;

/** Greatest share that works, to one part in a hundred of itself, below the first that does on the way down; null when none does. */
export function mostThat({ low, high, works }: Narrowing): number | null {
  let good = high * COARSE;
  while (good >= low && !works(good)) good *= COARSE;
  if (good < low) return null;
  let bad = good / COARSE;
  while (bad / good > 1.01) {
    const middle = Math.sqrt(good * bad);
    if (works(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
