/*
 * What a search looks up in a program again and again: jobs and branches by item, and which roles of a job's branches are alike.
 * Invariant: worked out once a program, and for a job only when it is asked for.
 * Not here: how good a way is (services.ts).
 * Read next: services.ts.
 */
import { type Branch, type Job, type Program, pick, type Role } from './program.ts';
import { samenessOf } from './same-roles.ts';

/** Many branches of a job have a role with the same options: what is found in one holds in all. */
export interface AlikeRoles {
  /** The different ones. */
  readonly roles: readonly Role[];
  /** By branch and role, which of the different ones it is. */
  readonly ofBranch: readonly (readonly number[])[];
}

interface ProgramIndex {
  /** By item, the jobs with an option that needs it. */
  readonly jobsOf: readonly (readonly number[])[];
  /** Branches of the job with an option that needs the item, in their order. */
  readonly branchesOf: (job: number, item: number) => readonly number[];
  readonly alikeRolesOf: (job: number) => AlikeRoles;
}

const known = new WeakMap<Program, ProgramIndex>();
const NONE: readonly number[] = [];

export function indexOf(program: Program): ProgramIndex {
  const before = known.get(program);
  if (before !== undefined) return before;
  const jobsOf: number[][] = program.items.map(() => []);
  for (const [place, job] of program.jobs.entries()) {
    for (const item of new Set(job.branches.flatMap(itemsOf))) pick(jobsOf, item).push(place);
  }
  const byJob: (Map<number, number[]> | undefined)[] = program.jobs.map(() => undefined);
  const alike: (AlikeRoles | undefined)[] = program.jobs.map(() => undefined);
  const index: ProgramIndex = {
    jobsOf,
    branchesOf: (job, item) => {
      byJob[job] ??= branchesByItem(pick(program.jobs, job).branches);
      return byJob[job]?.get(item) ?? NONE;
    },
    alikeRolesOf: (job) => {
      const found = alike[job] ?? alikeRoles(pick(program.jobs, job));
      alike[job] = found;
      return found;
    },
  };
  known.set(program, index);
  return index;
}

function alikeRoles({ branches }: Job): AlikeRoles {
  const places = new Map<string, number>();
  const roles: Role[] = [];
  const ofBranch = branches.map((branch) =>
    branch.roles.map((role) => {
      const key = samenessOf(role);
      const place = places.get(key) ?? roles.push(role) - 1;
      places.set(key, place);
      return place;
    }),
  );
  return { roles, ofBranch };
}

function branchesByItem(branches: readonly Branch[]): Map<number, number[]> {
  const places = new Map<number, number[]>();
  for (const [place, branch] of branches.entries()) {
    for (const item of new Set(itemsOf(branch))) {
      const of = places.get(item);
      if (of === undefined) places.set(item, [place]);
      else of.push(place);
    }
  }
  return places;
}

function itemsOf({ roles }: Branch): readonly number[] {
  return roles.flatMap((role) => role.flatMap((option) => option.needs.map((need) => need.item)));
}
