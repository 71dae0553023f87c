/*
 * What the checker says when a number or a part of a finished answer does not come out the same again.
 * Invariant: an empty list means that all that was looked at came out the same; what is not a number never passes.
 * Not here: what is looked at (check-assembly.ts, check-plan.ts).
 * Read next: check-plan.ts, check-assembly.ts.
 */
export interface Discrepancy {
  /** Stable, kebab-case. */
  readonly code: string;
  readonly sentence: string;
  readonly expected: string;
  readonly found: string;
}

/** Relative; sums in another order differ in the last digits, nothing else may. */
const TOLERANCE = 1e-6;

export interface Compared {
  readonly code: string;
  /** What it is, as the subject of a sentence. */
  readonly what: string;
  readonly expected: number;
  readonly found: number;
}

/** Nothing when both are the same number. */
export function same({ code, what, expected, found }: Compared): readonly Discrepancy[] {
  const apart = Math.abs(expected - found);
  if (apart <= TOLERANCE * Math.max(1, Math.abs(expected))) return [];
  return [told({ code, sentence: `${what} comes out at ${show(expected)}, not ${show(found)}.`, expected, found })];
}

/** Nothing when what was found is no more than what is allowed. */
export function atMost({ code, what, expected, found }: Compared): readonly Discrepancy[] {
  if (found <= expected + TOLERANCE * Math.max(1, Math.abs(expected))) return [];
  return [
    told({ code, sentence: `${what} is ${show(found)}; no more than ${show(expected)} is allowed.`, expected, found }),
  ];
}

/** Nothing when the condition holds. */
export function holds(
  condition: boolean,
  otherwise: {
    readonly code: string;
    readonly sentence: string;
    readonly expected: string | number;
    readonly found: string | number;
  },
): readonly Discrepancy[] {
  return condition ? [] : [told(otherwise)];
}

export function told(one: {
  readonly code: string;
  readonly sentence: string;
  readonly expected: string | number;
  readonly found: string | number;
}): Discrepancy {
  return { ...one, expected: show(one.expected), found: show(one.found) };
}

function show(value: string | number): string {
  return typeof value === 'string' ? value : String(Number.isInteger(value) ? value : Number(value.toPrecision(9)));
}
