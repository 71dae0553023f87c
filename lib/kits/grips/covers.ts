/*
 * Covering sets: the small sets of elements that together take every case of a line.
 * Invariant: every set covers all cases and none of its elements can be left out.
 * Not here: what the cases are.
 * Read next: ../search-class.ts.
 */
import { COVERS_KEPT, LARGEST_COVER } from '../kit-constants.ts';

/** Sets of positions whose bits together fill `all`, smallest first, in a fixed order. */
export function findCovers({
  takes,
  all,
}: {
  readonly takes: readonly bigint[];
  readonly all: bigint;
}): readonly (readonly number[])[] {
  const found: (readonly number[])[] = [];
  for (const [position, bits] of takes.entries()) {
    if (bits === all && found.length < COVERS_KEPT) found.push([position]);
  }
  // What takes everything by itself makes any other piece of a set needless.
  const groups = groupByBits(takes, all);
  const canFill = fillable(groups, all);
  const extend = (chosen: readonly number[], covered: bigint, left: number): void => {
    if (left === 0) {
      if (covered === all && !hasNeedless(chosen, takes, all)) found.push(chosen);
      return;
    }
    const last = chosen.at(-1) ?? -1;
    const next = groups
      .filter(({ bits }) => (bits & ~covered) !== 0n && canFill(covered | bits, left - 1))
      .flatMap(({ positions }) => positions.filter((position) => position > last))
      .sort((a, b) => a - b);
    for (const position of next) {
      if (found.length >= COVERS_KEPT) return;
      extend([...chosen, position], covered | (takes[position] ?? 0n), left - 1);
    }
  };
  for (let size = 2; size <= LARGEST_COVER && found.length < COVERS_KEPT; size += 1) extend([], 0n, size);
  return found;
}

interface Group {
  readonly bits: bigint;
  readonly positions: number[];
}

/** Positions of equal bits together, those that fill everything left out. */
function groupByBits(takes: readonly bigint[], all: bigint): readonly Group[] {
  const groups = new Map<bigint, Group>();
  for (const [position, bits] of takes.entries()) {
    if (bits === all) continue;
    const group = groups.get(bits);
    if (group === undefined) groups.set(bits, { bits, positions: [position] });
    else group.positions.push(position);
  }
  return [...groups.values()];
}

/** Whether so many more groups can fill what is not covered yet; each question is answered once. */
function fillable(groups: readonly Group[], all: bigint): (covered: bigint, left: number) => boolean {
  const answers = Array.from({ length: LARGEST_COVER + 1 }, () => new Map<bigint, boolean>());
  const ask = (covered: bigint, left: number): boolean => {
    if (covered === all) return true;
    if (left === 0) return false;
    const known = answers[left]?.get(covered);
    if (known !== undefined) return known;
    const answer = groups.some(({ bits }) => ask(covered | bits, left - 1));
    answers[left]?.set(covered, answer);
    return answer;
  };
  return ask;
}

function hasNeedless(chosen: readonly number[], takes: readonly bigint[], all: bigint): boolean {
  return chosen.some((left) => {
    let covered = 0n;
    for (const position of chosen) if (position !== left) covered |= takes[position] ?? 0n;
    return covered === all;
  });
}
