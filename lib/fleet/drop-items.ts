/*
 * Drops models that another model can stand in for everywhere, at no more cost, pieces or time and with stock for every crew.
 * Invariant: replacing the dropped item in any plan gives a plan that is no worse by any aim, so some best plan survives.
 * Not here: dominance between options of one role (prepare.ts).
 * Read next: build-model.ts.
 */
import { type Option, type Program, pick, type Role } from './program.ts';
import { differentRoles } from './same-roles.ts';

/** A role in which an item is used, and the options there that use it. */
interface RoleUse {
  readonly role: Role;
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
  const left = new Map(
    differentRoles(program).map((role) => [role, role.filter((option) => !isGone(option, dropped))] as const),
  );
  const jobs = program.jobs.map((job) => {
    const branches = job.branches
      .map((branch) => ({ ...branch, roles: branch.roles.map((role) => left.get(role) ?? role) }))
      .filter((branch) => branch.roles.every((role) => role.length > 0));
    return { ...job, branches };
  });
  return { ...program, jobs };
}

function usesByItem(program: Program): readonly (readonly RoleUse[])[] {
  const uses: RoleUse[][] = program.items.map(() => []);
  for (const role of differentRoles(program)) {
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
  return uses;
}

function mostNeeded(roles: readonly RoleUse[], item: number): number {
  let most = 0;
  for (const { options } of roles) {
    for (const option of options) most = Math.max(most, countOf(option, item));
  }
  return most;
}

interface StandIn {
  readonly program: Program;
  readonly item: number;
  readonly other: number;
  readonly dropped: ReadonlySet<number>;
}

function standsIn(
  request: StandIn & { readonly uses: readonly (readonly RoleUse[])[]; readonly most: readonly number[] },
): boolean {
  const { program, uses, most, item, other, dropped } = request;
  const own = pick(program.items, item);
  const stand = pick(program.items, other);
  if (pick(uses, other).length === 0 || stand.cost_minor > own.cost_minor || stand.pieces > own.pieces) return false;
  if (stand.free < program.crews * pick(most, other)) return false;
  for (const { role, options } of pick(uses, item)) {
    for (const option of options) if (!isGone(option, dropped) && !isReplaced(request, role, option)) return false;
  }
  return true;
}

function isGone({ needs }: Option, dropped: ReadonlySet<number>): boolean {
  for (const { item } of needs) if (dropped.has(item)) return true;
  return false;
}

function isReplaced(request: StandIn, role: Role, option: Option): boolean {
  for (const candidate of role) {
    if (replaces(request, option, candidate) && !isGone(candidate, request.dropped)) return true;
  }
  return false;
}

function replaces({ program, item, other }: StandIn, option: Option, candidate: Option): boolean {
  const labour = program.labour_minor_per_second;
  if (candidate.time > option.time) return false;
  if (candidate.cost_minor + labour * candidate.time > option.cost_minor + labour * option.time) return false;
  for (const need of candidate.needs) {
    if (need.item === item) return false;
    const allowed = countOf(option, need.item);
    if (need.count > (need.item === other ? Math.max(countOf(option, item), allowed) : allowed)) return false;
  }
  return true;
}

function countOf({ needs }: Option, item: number): number {
  for (const need of needs) if (need.item === item) return need.count;
  return 0;
}
