/*
 * Finds a smallest-by-inclusion set of named things that cannot all hold.
 * Invariant: what is returned cannot all hold, and dropping any one of it makes it possible.
 * Not here: what the things are; the caller's `possible` takes its own background for granted.
 * Read next: search.ts. Source of the method: U. Junker, "QuickXplain", AAAI 2004 (from memory).
 */
export interface ConflictAnswer<Item> {
  /** Null when everything can hold together. */
  readonly conflict: readonly Item[] | null;
  /** Questions put to `possible`. */
  readonly checks: number;
}

/** Earlier items are preferred to stay: the conflict is made of the latest items that suffice. */
export function minimalConflict<Item>(problem: {
  readonly items: readonly Item[];
  /** Must be monotone: dropping items never turns a possible set into an impossible one. */
  readonly possible: (kept: readonly Item[]) => boolean;
}): ConflictAnswer<Item> {
  let checks = 0;
  const possible = (kept: readonly Item[]): boolean => {
    checks += 1;
    return problem.possible(kept);
  };
  if (possible(problem.items)) return { conflict: null, checks };
  if (!possible([])) return { conflict: [], checks };
  const explain = (background: readonly Item[], added: readonly Item[], items: readonly Item[]): readonly Item[] => {
    if (added.length > 0 && !possible(background)) return [];
    if (items.length === 1) return items;
    const half = Math.ceil(items.length / 2);
    const first = items.slice(0, half);
    const second = items.slice(half);
    const fromSecond = explain([...background, ...first], first, second);
    const fromFirst = explain([...background, ...fromSecond], fromSecond, first);
    return [...fromFirst, ...fromSecond];
  };
  return { conflict: explain([], [], problem.items), checks };
}
