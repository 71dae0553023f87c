/*
 * How many letters two words differ by: put in, left out, changed, or two neighbours swapped.
 * Invariant: symmetric; never more than the limit plus one, at which the search stops.
 * Not here: what is compared (name-key.ts).
 * Read next: find-alike.ts.
 */

/** The distance of Damerau and Levenshtein in its restricted form (optimal string alignment), cut off above `limit`. */
export function editDistance({
  a,
  b,
  limit,
}: {
  readonly a: string;
  readonly b: string;
  readonly limit: number;
}): number {
  if (a === b) return 0;
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: readonly number[] = [];
  let previous: readonly number[] = Array.from({ length: b.length + 1 }, (_unused, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const current = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      const plain = Math.min((previous[j - 1] ?? 0) + same, (previous[j] ?? 0) + 1, (current[j - 1] ?? 0) + 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      current.push(swapped ? Math.min(plain, (before[j - 2] ?? 0) + 1) : plain);
    }
    if (Math.min(...current) > limit) return limit + 1;
    before = previous;
    previous = current;
  }
  return Math.min(previous[b.length] ?? 0, limit + 1);
}
