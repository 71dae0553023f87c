/*
 * Drops models that another model can stand in for everywhere, at no more cost, pieces or time and with stock for every crew.
 * Invariant: replacing the dropped item in any plan gives a plan that is no worse by any aim, so some best plan survives.
 * Not here: dominance between options of one role (prepare.ts).
 * Read next: build-model.ts.
 */
import { type Option, type Program, pick } from './program.ts';

/** A role of a branch in which an item is used, and the options there that use it. */
interface RoleUse {
  readonly role: readonly Option[];
  readonly options: readonly Option[];
}

export function dropDominatedItems(program: Program): Program {
  const uses = usesByItem(program);
  const most = uses.map((roles, item) => mostNeeded(roles, item));
  const dropped = new Set<number>();
  for (let item = 0; item < program.items.length; item += 1) {
    if (pick(uses, item).length === 0) continue;
    const stand = program.items.findIndex(
      (_, other) => other !== item && !dropped.has(other) && standsIn({ program, uses, most, item, other, dropped }),
    );
    if (stand >= 0) dropped.add(item);
  }
  return dropped.size === 0 ? program : withoutItems(program, dropped);
}

/** The program without options that need any of the items; the items keep their indexes. */
export function withoutItems(program: Program, dropped: ReadonlySet<number>): Program {
  const jobs = program.jobs.map((job) => {
    const branches = job.branches
      .map((branch) => ({
        ...branch,
        roles: branch.roles.map((role) =>
          role.filter((option) => option.needs.every((need) => !dropped.has(need.item))),
        ),
      }))
      .filter((branch) => branch.roles.every((role) => role.length > 0));
    return { ...job, branches };
  });
  return { ...program, jobs };
}

function usesByItem(program: Program): readonly (readonly RoleUse[])[] {
  const uses: RoleUse[][] = program.items.map(() => []);
  for (const job of program.jobs) {
    for (const branch of job.branches) {
      for (const role of branch.roles) {
        const byItem = new Map<number, Option[]>();
        for (const option of role) {
          for (const need of option.needs) {
            const options = byItem.get(need.item);
            if (options === undefined) byItem.set(need.item, [option]);
            else options.push(option);
          }
        }
        for (const [item, options] of byItem) pick(uses, item).push({ role, options });
      }
    }
  }
  return uses;
}

function mostNeeded(roles: readonly RoleUse[], item: number): number {
  let most = 0;
  for (const { options } of roles) {
    for (const option of options) most = Math.max(most, countOf(option, item));
  }
  return most;
}

function standsIn(request: {
  readonly program: Program;
  readonly uses: readonly (readonly RoleUse[])[];
  readonly most: readonly number[];
  readonly item: number;
  readonly other: number;
  readonly dropped: ReadonlySet<number>;
}): boolean {
  const { program, uses, most, item, other, dropped } = request;
  const own = pick(program.items, item);
  const stand = pick(program.items, other);
  if (pick(uses, other).length === 0 || stand.cost_minor > own.cost_minor || stand.pieces > own.pieces) return false;
  if (stand.free < program.crews * pick(most, other)) return false;
  return pick(uses, item).every(({ role, options }) =>
    options.every(
      (option) =>
        isGone(option, dropped) ||
        role.some((candidate) => !isGone(candidate, dropped) && replaces({ program, option, candidate, item, other })),
    ),
  );
}

function isGone(option: Option, dropped: ReadonlySet<number>): boolean {
  return option.needs.some((need) => dropped.has(need.item));
}

function replaces(request: {
  readonly program: Program;
  readonly option: Option;
  readonly candidate: Option;
  readonly item: number;
  readonly other: number;
}): boolean {
  const { program, option, candidate, item, other } = request;
  const labour = program.labour_minor_per_second;
  if (candidate.time > option.time) return false;
  if (candidate.cost_minor + labour * candidate.time > option.cost_minor + labour * option.time) return false;
  const allowed = (need: number) =>
    need === item
      ? 0
      : need === other
        ? Math.max(countOf(option, item), countOf(option, other))
        : countOf(option, need);
  return candidate.needs.every((need) => need.count <= allowed(need.item));
}

function countOf(option: Option, item: number): number {
  return option.needs.find((need) => need.item === item)?.count ?? 0;
}
