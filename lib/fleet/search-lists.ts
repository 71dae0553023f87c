/*
 * What a search for plans goes through, worked out once from the program: jobs, items beside each other, needs of options.
 * Invariant: the order depends on the program alone.
 * Not here: the search (search-plan.ts).
 * Read next: search-plan.ts.
 */
import { type Need, type Program, pick } from './program.ts';
import { differentRoles } from './same-roles.ts';

/** Longest first. */
export function jobOrder(program: Program): readonly number[] {
  const length = program.jobs.map((job) => {
    const branch = Math.min(
      ...job.branches.map((one) =>
        one.roles.reduce((sum, role) => sum + Math.min(...role.map((o) => o.time)), job.moveTime),
      ),
    );
    return job.qty * branch;
  });
  return program.jobs.map((_, index) => index).sort((a, b) => pick(length, b) - pick(length, a) || a - b);
}

/** Items that stand beside an item in some role. */
export function neighbourItems(program: Program): readonly (readonly number[])[] {
  const sets = program.items.map(() => new Set<number>());
  for (const role of differentRoles(program)) {
    const items = [...new Set(role.flatMap((option) => option.needs.map((need) => need.item)))];
    for (const a of items) for (const b of items) if (a !== b) pick(sets, a).add(b);
  }
  return sets.map((set) => [...set].sort((a, b) => a - b));
}

/** What options need, each set once. */
export function needsOfOptions(program: Program): readonly (readonly Need[])[] {
  const sets = new Map<string, readonly Need[]>();
  for (const { needs } of differentRoles(program).flat()) {
    const key = needs.map((need) => `${need.item}x${need.count}`).join(' ');
    if (needs.length > 0 && !sets.has(key)) sets.set(key, needs);
  }
  return [...sets.values()];
}
