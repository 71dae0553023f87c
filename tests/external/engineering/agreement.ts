import { type Check, type Entry, isAt, type Leaf, leavesOf, mapLeaves, type Value } from './entry.ts';
import { type Tolerance, toleranceOf } from './tolerance.ts';

/*
 * Holds what our functions say against what an entry expects.
 * Invariant: every leaf is found, given or named as not ours; a leaf that we find and the entry lacks is a fault too.
 * Not here: tolerances (tolerance.ts).
 * Read next: tolerance.ts.
 */
export function found(entry: Entry, check: Check, inputs: Value = entry.inputs): Value {
  const given = check.given ?? [];
  const shape = mapLeaves(entry.expected, (leaf, path) => (isAt(path, given) ? leaf : null));
  return check.find({ id: entry.id, inputs, shape });
}

/** The leaves that are compared: neither given nor named as not ours. */
export function comparedOf(entry: Entry, check: Check): ReadonlyMap<string, Leaf> {
  const aside = [...(check.given ?? []), ...Object.keys(check.besides ?? {})];
  return new Map([...leavesOf(entry.expected)].filter(([path]) => !isAt(path, aside)));
}

export function faultsOf(entry: Entry, check: Check, answer: Value): readonly string[] {
  const answers = leavesOf(answer);
  const compared = comparedOf(entry, check);
  const faults = [...compared].flatMap(([path, expected]) => {
    const name = path === '' ? entry.id : `${entry.id}, ${path}`;
    const ours = answers.get(path);
    if (ours === undefined) return [`${name}: expected ${expected}, and nothing was found`];
    const tolerance = toleranceOf({ text: entry.tolerance, path, expected });
    return agrees({ ours, expected, tolerance })
      ? []
      : [`${name}: expected ${expected} (${entry.tolerance}), found ${ours}`];
  });
  const surplus = [...answers.keys()].filter((path) => !compared.has(path));
  return [...faults, ...surplus.map((path) => `${entry.id}, ${path}: found, and not expected`)];
}

/** The entry with one leaf of what it expects made wrong: half as much again, or turned round. */
export function spoil(entry: Entry, at: string): Entry {
  return { ...entry, expected: mapLeaves(entry.expected, (leaf, path) => (path === at ? wrong(leaf) : leaf)) };
}

function wrong(leaf: Leaf): Leaf {
  if (typeof leaf === 'number') return leaf === 0 ? 1 : leaf * 1.5;
  if (typeof leaf === 'boolean') return !leaf;
  return `not ${leaf}`;
}

function agrees({
  ours,
  expected,
  tolerance,
}: {
  readonly ours: Leaf;
  readonly expected: Leaf;
  readonly tolerance: Tolerance;
}): boolean {
  if (typeof ours !== 'number' || typeof expected !== 'number') return ours === expected;
  if (!Number.isFinite(ours)) return false;
  /** What binary fractions may be apart. */
  const dust = 1e-9 * Math.max(Math.abs(expected), 1e-9);
  if (tolerance.kind === 'reached from below')
    return ours <= expected + dust && ours >= expected - tolerance.share * Math.abs(expected);
  const apart = tolerance.kind === 'share' ? tolerance.share * Math.abs(expected) : tolerance.by;
  return Math.abs(ours - expected) <= apart + dust;
}
