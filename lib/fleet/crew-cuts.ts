/*
 * Rows that say how many pieces all crews need together: work that only a set of items can do, and that takes n crews' hours, needs n of them.
 * Invariant: every row holds for every plan that serves all valves; none cuts off a plan, only fractions of one.
 * Not here: the linear program they are added to (solve-stage.ts).
 * Read next: build-model.ts.
 */
import { type Branch, type Program, pick } from './program.ts';

/** At least `pieces` of the items are carried, over all crews. */
export interface CrewCut {
  readonly items: readonly number[];
  readonly pieces: number;
}

/** Jobs that need one of a kind of items whichever way they are done. */
interface Kind {
  readonly items: readonly number[];
  readonly jobs: readonly { readonly time: number; readonly items: readonly number[] }[];
}

export interface CutFinder {
  /** Rows that the amounts carried, by item, do not meet. */
  readonly find: (carried: readonly number[]) => readonly CrewCut[];
}

export function makeCutFinder(program: Program): CutFinder {
  const kinds = kindsOf(program);
  return {
    find: (carried) => {
      const cuts: CrewCut[] = [];
      for (const kind of kinds) {
        for (let pieces = 2; pieces <= program.crews; pieces += 1) {
          const hours = (pieces - 1) * program.secondsPerCrew * (1 + 1e-9) + 1e-6;
          for (const order of removalOrders(kind, carried)) {
            const items = smallestSet({ kind, order, hours });
            const sum = items?.reduce((total, item) => total + pick(carried, item), 0);
            if (items !== undefined && sum !== undefined && sum < pieces - 1e-4) cuts.push({ items, pieces });
          }
        }
      }
      return withoutRepeats(cuts);
    },
  };
}

function withoutRepeats(cuts: readonly CrewCut[]): readonly CrewCut[] {
  return [...new Map(cuts.map((cut) => [`${cut.pieces}:${cut.items.join(' ')}`, cut])).values()];
}

/** What is carried most is taken out of the set first: what stays is carried least, so the row is missed most. */
function removalOrders(kind: Kind, carried: readonly number[]): readonly (readonly number[])[] {
  const time = new Map(kind.items.map((item) => [item, 0]));
  for (const job of kind.jobs) {
    for (const item of job.items) time.set(item, (time.get(item) ?? 0) + job.time / job.items.length);
  }
  const byCarried = [...kind.items].sort((a, b) => pick(carried, b) - pick(carried, a) || a - b);
  const worth = (item: number) => pick(carried, item) / ((time.get(item) ?? 0) + 1);
  const byWorth = [...kind.items].sort((a, b) => worth(b) - worth(a) || a - b);
  return [byCarried, byWorth];
}

/** A set from which nothing more can be taken while the work that only it can do still exceeds the hours. */
function smallestSet(request: {
  readonly kind: Kind;
  readonly order: readonly number[];
  readonly hours: number;
}): readonly number[] | undefined {
  const { kind, order, hours } = request;
  const inside = new Set(kind.items);
  let jobs = kind.jobs;
  const total = (list: Kind['jobs']) => list.reduce((sum, job) => sum + job.time, 0);
  if (total(jobs) <= hours) return undefined;
  for (const item of order) {
    const left = jobs.filter((job) => !job.items.includes(item));
    if (total(left) <= hours) continue;
    inside.delete(item);
    jobs = left;
  }
  return [...inside].sort((a, b) => a - b);
}

function kindsOf(program: Program): readonly Kind[] {
  const parent = program.items.map((_, index) => index);
  const root = (item: number): number => {
    let at = item;
    while (pick(parent, at) !== at) at = pick(parent, at);
    return at;
  };
  const join = (a: number, b: number): void => {
    parent[Math.max(root(a), root(b))] = Math.min(root(a), root(b));
  };
  for (const job of program.jobs) {
    for (const branch of job.branches) for (const role of branch.roles) joinSwapped(role, join);
    const dearest = job.branches.flatMap((branch) =>
      pick(branch.roles, 0).map((core) => dearestOf(program, core.needs)),
    );
    const first = dearest.find((item) => item >= 0);
    for (const item of dearest) if (item >= 0 && first !== undefined) join(first, item);
  }
  const roots = [...new Set(program.items.map((_, item) => root(item)))];
  return roots
    .map((kindRoot) => kindOf({ program, isOfKind: (item) => root(item) === kindRoot }))
    .filter((kind) => kind.jobs.length > 0);
}

/** Options that differ in one item only make those two items alternatives of each other. */
function joinSwapped(role: Branch['roles'][number], join: (a: number, b: number) => void): void {
  const byRest = new Map<string, number>();
  for (const option of role) {
    for (const need of option.needs) {
      const rest = option.needs.filter((other) => other.item !== need.item).map((other) => other.item);
      const key = rest.join(' ');
      const known = byRest.get(key);
      if (known === undefined) byRest.set(key, need.item);
      else join(known, need.item);
    }
  }
}

function dearestOf(program: Program, needs: readonly { readonly item: number }[]): number {
  let dearest = -1;
  for (const { item } of needs) {
    if (dearest < 0 || pick(program.items, item).cost_minor > pick(program.items, dearest).cost_minor) dearest = item;
  }
  return dearest;
}

function kindOf(request: { readonly program: Program; readonly isOfKind: (item: number) => boolean }): Kind {
  const { program, isOfKind } = request;
  const jobs = program.jobs.flatMap((job) => {
    const sets = job.branches.map((branch) => itemsNeeded(branch, isOfKind));
    if (sets.some((set) => set === undefined)) return [];
    const least = Math.min(
      ...job.branches.map((branch) =>
        branch.roles.reduce((sum, role) => sum + Math.min(...role.map((option) => option.time)), job.moveTime),
      ),
    );
    return [{ time: job.qty * least, items: [...new Set(sets.flatMap((set) => set ?? []))] }];
  });
  return { items: [...new Set(jobs.flatMap((job) => job.items))].sort((a, b) => a - b), jobs };
}

/** The items of a kind in the first role of a branch that cannot do without the kind. */
function itemsNeeded(branch: Branch, isOfKind: (item: number) => boolean): readonly number[] | undefined {
  for (const role of branch.roles) {
    const picks = role.map((option) => option.needs.find((need) => isOfKind(need.item))?.item);
    if (picks.every((item) => item !== undefined)) return picks.filter((item) => item !== undefined);
  }
  return undefined;
}
