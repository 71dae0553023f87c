/*
 * Limits in rising order, and how many of them a value passes: values of one rank are alike to every limit.
 * Invariant: two values have one rank exactly when each limit lets both through or neither.
 * Not here: what is limited (../grips/grip-finder.ts, ../chain/reaction-finder.ts).
 * Read next: ../grips/grip-finder.ts.
 */
export type RankOf = (value: number) => number;

/** How many different limits lie below a value. */
export function rankAmong(limits: readonly number[]): RankOf {
  const sorted = Float64Array.from(new Set(limits)).sort();
  return (value) => {
    let from = 0;
    let to = sorted.length;
    while (from < to) {
      const middle = (from + to) >> 1;
      if ((sorted[middle] ?? Number.POSITIVE_INFINITY) < value) from = middle + 1;
      else to = middle;
    }
    return from;
  };
}

/** One and the same array for equal lists of positions. */
export function sharing(): (positions: readonly number[]) => readonly number[] {
  const shelves = new Map<number, (readonly number[])[]>();
  return (positions) => {
    let hash = positions.length;
    for (const position of positions) hash = (Math.imul(hash, 0x01000193) ^ position) | 0;
    const shelf = shelves.get(hash) ?? [];
    const known = shelf.find(
      (other) => other.length === positions.length && other.every((position, index) => position === positions[index]),
    );
    if (known !== undefined) return known;
    shelf.push(positions);
    shelves.set(hash, shelf);
    return positions;
  };
}
