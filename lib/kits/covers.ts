/*
 * Covering sets: the small sets of elements that together take every case of a line.
 * Invariant: every set covers all cases and none of its elements can be left out.
 * Not here: what the cases are.
 * Read next: search-class.ts.
 */
import { COVERS_KEPT, LARGEST_COVER } from './kit-constants.ts';

/** Sets of positions whose bits together fill `all`, smallest first, in a fixed order. */
export function findCovers({
  takes,
  all,
}: {
  readonly takes: readonly bigint[];
  readonly all: bigint;
}): readonly (readonly number[])[] {
  const found: (readonly number[])[] = [];
  const extend = (chosen: readonly number[], covered: bigint, size: number): void => {
    if (found.length >= COVERS_KEPT) return;
    if (chosen.length === size) {
      if (covered === all && !hasNeedless(chosen, takes, all)) found.push(chosen);
      return;
    }
    for (let next = (chosen.at(-1) ?? -1) + 1; next < takes.length; next += 1) {
      const bits = takes[next] ?? 0n;
      if ((bits & ~covered) !== 0n) extend([...chosen, next], covered | bits, size);
    }
  };
  for (let size = 1; size <= LARGEST_COVER; size += 1) extend([], 0n, size);
  return found;
}

function hasNeedless(chosen: readonly number[], takes: readonly bigint[], all: bigint): boolean {
  return chosen.some((left) => {
    let covered = 0n;
    for (const position of chosen) if (position !== left) covered |= takes[position] ?? 0n;
    return covered === all;
  });
}
