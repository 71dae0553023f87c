/*
 * Turns a fleet problem into the planner's form and leaves out what can never be used or is never better.
 * Invariant: some best plan survives, for every preference; a dropped option or item is matched by another at no more cost, pieces or time.
 * Not here: bounds and search.
 * Read next: drop-items.ts.
 */
import type { Alternative, ChoiceFamily, LineClass } from '#lib/equipment/choices.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { dropDominatedItems } from './drop-items.ts';
import type { FleetProblem } from './fleet-problem.ts';
import { type Branch, type Job, type Option, type Program, pick, type Role } from './program.ts';
import { roleSharing } from './same-roles.ts';
import { type RawOption, splitFamily } from './split-family.ts';

export interface Prepared {
  /** Holds only the classes that some crew could do if it did nothing else. */
  readonly program: Program;
  readonly asked: number;
  /** Valves in the program. */
  readonly possible: number;
  /** Second visits that rounding of chances may wrongly count; 0 unless a family has very many chances. */
  readonly chanceSlack: number;
}

export function prepare(problem: FleetProblem): Prepared {
  invariant(problem.crews >= 1, 'A plan needs at least one crew.');
  const itemIndex = new Map(problem.items.map((item, index) => [item.id, index]));
  invariant(itemIndex.size === problem.items.length, 'Every item is listed once.');
  let chanceSlack = 0;
  const trim = roleSharing((role) => withoutDominated(role, problem.labour_minor_per_hour / 3600));
  const jobs = problem.classes.map((lineClass) => {
    const { job, chanceLost } = toJob({ problem, lineClass, itemIndex, trim });
    chanceSlack += chanceLost * lineClass.qty;
    return job;
  });
  const asked = problem.classes.reduce((sum, lineClass) => sum + lineClass.qty, 0);
  const program = dropDominatedItems({
    jobs: jobs.filter((job) => job.branches.length > 0 && job.qty > 0),
    items: problem.items.map(({ id, cost_minor, pieces, free }) => ({ id, cost_minor, pieces, free })),
    crews: problem.crews,
    secondsPerCrew: problem.secondsPerCrew,
    labour_minor_per_second: problem.labour_minor_per_hour / 3600,
  });
  const possible = program.jobs.reduce((sum, job) => sum + job.qty, 0);
  return { program, asked, possible, chanceSlack };
}

function toJob(request: {
  readonly problem: FleetProblem;
  readonly lineClass: LineClass;
  readonly itemIndex: ReadonlyMap<string, number>;
  readonly trim: (role: Role) => Role;
}): { readonly job: Job; readonly chanceLost: number } {
  const { problem, lineClass, itemIndex, trim } = request;
  let chanceLost = 0;
  const branches: Branch[] = [];
  for (const family of lineClass.families) {
    const roles = rolesOf({ family, itemIndex, problem });
    if (roles.some((role) => role.length === 0)) continue;
    const chances = problem.preference === 'surest' ? 'kept' : 'ignored';
    const split = splitFamily({ family, roles, chances });
    chanceLost = Math.max(chanceLost, split.chanceLost);
    for (const branch of split.branches) {
      const trimmed = trimBranch({ problem, branch, moveTime: lineClass.moveTime, trim });
      if (trimmed !== undefined) branches.push(trimmed);
    }
  }
  return { job: { id: lineClass.id, qty: lineClass.qty, moveTime: lineClass.moveTime, branches }, chanceLost };
}

function rolesOf(request: {
  readonly family: ChoiceFamily;
  readonly itemIndex: ReadonlyMap<string, number>;
  readonly problem: FleetProblem;
}): readonly (readonly RawOption[])[] {
  const { family, itemIndex, problem } = request;
  return [family.cores, ...family.slots].map((role) =>
    role.map((alternative) => toOption(alternative, itemIndex)).filter((option) => isInStock({ problem, option })),
  );
}

function toOption(alternative: Alternative, itemIndex: ReadonlyMap<string, number>): RawOption {
  const counts = new Map<number, number>();
  for (const need of alternative.needs) {
    const item = itemIndex.get(need.item);
    invariant(item !== undefined, `The item ${need.item} is needed but not listed.`);
    if (need.count > 0) counts.set(item, (counts.get(item) ?? 0) + need.count);
  }
  return {
    id: alternative.id,
    needs: [...counts].map(([item, count]) => ({ item, count })).sort((a, b) => a.item - b.item),
    cost_minor: alternative.cost_minor,
    time: alternative.timePerValve,
    chance: alternative.chance,
  };
}

function isInStock(request: { readonly problem: FleetProblem; readonly option: Option }): boolean {
  return request.option.needs.every((need) => need.count <= pick(request.problem.items, need.item).free);
}

function trimBranch(request: {
  readonly problem: FleetProblem;
  readonly branch: Branch;
  readonly moveTime: number;
  readonly trim: (role: Role) => Role;
}): Branch | undefined {
  const { problem, branch, moveTime, trim } = request;
  const fastest = branch.roles.map((role) => Math.min(...role.map((option) => option.time)));
  const least = fastest.reduce((sum, time) => sum + time, moveTime);
  const roles = branch.roles.map((role, index) => {
    const others = least - pick(fastest, index);
    const usable = role.filter(
      (option) => isInStock({ problem, option }) && others + option.time <= problem.secondsPerCrew + 1e-9,
    );
    return trim(usable);
  });
  return roles.some((role) => role.length === 0) ? undefined : { ...branch, roles };
}

/** Keeps of the options of one role those that no other matches on pieces needed, time and cost. */
function withoutDominated(role: Role, labourPerSecond: number): Role {
  const kept: Option[] = [];
  for (const [index, option] of role.entries()) {
    const isBeaten = role.some((other, otherIndex) => {
      if (otherIndex === index || !covers(other, option, labourPerSecond)) return false;
      return !covers(option, other, labourPerSecond) || otherIndex < index;
    });
    if (!isBeaten) kept.push(option);
  }
  return kept;
}

function covers(better: Option, worse: Option, labourPerSecond: number): boolean {
  if (better.time > worse.time || better.needs.length > worse.needs.length) return false;
  if (better.cost_minor + labourPerSecond * better.time > worse.cost_minor + labourPerSecond * worse.time) return false;
  return better.needs.every((need) => worse.needs.some((own) => own.item === need.item && own.count >= need.count));
}
