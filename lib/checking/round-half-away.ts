/*
 * Rounds a quotient of money to whole minor units, half away from nought.
 * Invariant: a half that binary fractions put a billionth short still rounds away.
 * Not here: where rounding is asked for (check-price.ts).
 * Read next: check-price.ts.
 */
export function roundHalfAway(numerator: number, denominator: number): number {
  const size = Math.abs(numerator) / denominator;
  const below = Math.trunc(size);
  const rounded = size - below >= 0.5 - 1e-9 ? below + 1 : below;
  return numerator < 0 && rounded !== 0 ? -rounded : rounded;
}
