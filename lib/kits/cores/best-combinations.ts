/*
 * The combinations of one alternative a role that no other combination beats in any measure at once, without listing them all.
 * Invariant: the same ones come out, in the same order, as from holding every combination against every other.
 * Not here: what the measures are of (../list-assemblies.ts).
 * Read next: ../list-assemblies.ts.
 */

/** One alternative, or several joined: the smaller a measure the better; measures add up, chances multiply. */
export interface Scored {
  readonly ids: readonly string[];
  /** Whole numbers, so that sums are exact. */
  readonly measures: readonly number[];
  readonly chance: number;
}

/** Roles in order: what is beaten within its role is beaten in every combination, so that each join starts from the best alone. */
export function bestOfFamily(roles: readonly (readonly Scored[])[]): readonly Scored[] {
  const [first = [], ...others] = roles;
  return others.reduce<readonly Scored[]>((joined, role) => {
    const best = notBeaten(role);
    return notBeaten(joined.flatMap((one) => best.map((other) => join(one, other))));
  }, notBeaten(first));
}

function join(one: Scored, other: Scored): Scored {
  return {
    ids: [...one.ids, ...other.ids],
    measures: one.measures.map((value, index) => value + (other.measures[index] ?? 0)),
    chance: one.chance * other.chance,
  };
}

/** Sorted by the measures in their order, then chance and name; each is held against those before it, which are the only ones that may beat it. */
export function notBeaten(scored: readonly Scored[]): readonly Scored[] {
  const kept: Scored[] = [];
  for (const one of scored.toSorted(compare)) if (!kept.some((other) => beats(other, one))) kept.push(one);
  return kept;
}

function compare(a: Scored, b: Scored): number {
  for (let index = 0; index < a.measures.length; index += 1) {
    const difference = (a.measures[index] ?? 0) - (b.measures[index] ?? 0);
    if (difference !== 0) return difference;
  }
  if (a.chance !== b.chance) return b.chance - a.chance;
  return a.ids.join(' ') < b.ids.join(' ') ? -1 : 1;
}

/** At least as good in everything; equals count as beaten, so that one of them is listed. */
function beats(a: Scored, b: Scored): boolean {
  if (a.chance < b.chance) return false;
  for (let index = 0; index < a.measures.length; index += 1) {
    if ((a.measures[index] ?? 0) > (b.measures[index] ?? 0)) return false;
  }
  return true;
}
