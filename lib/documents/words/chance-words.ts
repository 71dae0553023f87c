/*
 * The chance that a kit moves its valve at the first visit, told for what it is.
 * Invariant: never shown without the word estimate; the ends are told as bounds, never as certainty.
 * Not here: the chance itself (../../kits/cores/core-chance.ts).
 * Read next: ../papers/site-class.ts.
 */
export const WHAT_THE_CHANCE_IS =
  'An estimate from the range of the starting torque, taken as spread between its ends and likeliest at its likely value. It is no promise: a stuck valve, a wrong list or a hidden fault is not in it.';

/** `about 87 %`, `more than 99 %`, `less than 1 %`. */
export function chanceText(chance: number): string {
  if (!Number.isFinite(chance)) return 'not known';
  if (chance > 0.99) return 'more than 99 %';
  if (chance < 0.01) return 'less than 1 %';
  return `about ${(chance * 100).toFixed(0)} %`;
}
