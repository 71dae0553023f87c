/*
 * Puts lines in the order of a column, leaving the list's own order as it is.
 * Invariant: a stable order: equal lines stay as the list has them, and empty cells come last either way.
 * Not here: which lines are shown (line-filter.ts).
 * Read next: line-filter.ts.
 */
export interface SortKey {
  readonly id: number;
  /** Text or number sorted by; empty text for none. */
  readonly key: string | number;
}

/** Numbers inside a text count as numbers: “DN 80” comes before “DN 100”. */
const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

export function sortLines(keys: readonly SortKey[], way: 'up' | 'down'): readonly number[] {
  const sign = way === 'up' ? 1 : -1;
  const given = keys.filter(({ key }) => key !== '');
  const missing = keys.filter(({ key }) => key === '');
  const sorted = given.toSorted((a, b) => sign * compare(a.key, b.key));
  return [...sorted, ...missing].map(({ id }) => id);
}

function compare(a: string | number, b: string | number): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  // What could not be read as a number stands behind all that could.
  if (typeof a !== typeof b) return typeof a === 'number' ? -1 : 1;
  return collator.compare(String(a), String(b));
}
