/*
 * Counts the steps of a search, so that it halts at the same place on every machine.
 * Invariant: effort only grows; whoever sees it above the budget stops and says what is known so far.
 * Not here: seconds.
 * Read next: fewest-cases.ts.
 */
export interface Meter {
  readonly budget: number;
  effort: number;
}

export function isSpent({ effort, budget }: Meter): boolean {
  return effort > budget;
}
