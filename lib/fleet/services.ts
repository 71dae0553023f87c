/*
 * The best way to do one valve of a job with a given kit, kept up to date while a search changes kits.
 * Invariant: a service is the best of all ways the kit allows, of equals the first, whichever way it was come to.
 * Not here: which crew does which job (share-out.ts) and which kits to try (search-plan.ts).
 * Read next: share-out.ts.
 */

import { type Need, type Option, type Program, pick } from './program.ts';
import { indexOf } from './program-index.ts';
import { type Blend, blended, optionWeight, valveWeight } from './weights.ts';

export interface Service {
  readonly weight: number;
  readonly time: number;
  readonly branch: number;
  readonly options: readonly number[];
  /** Weight and time together, by which ways are compared; of equals the branch that stands first is the best. */
  readonly score: number;
  /** What it needs to be carried: without other items it stays the best. */
  readonly needs: readonly Need[];
}

interface WeighedOption {
  /** Its place in the role. */
  readonly index: number;
  readonly needs: readonly Need[];
  readonly weight: number;
  readonly time: number;
  /** Weight and time together, by which options are compared. */
  readonly score: number;
}

/** The options of a role, best score first: the first that is carried is the best. */
type WeighedRole = readonly WeighedOption[];

interface WeighedBranch {
  readonly index: number;
  readonly weight: number;
  /** Score of the best options of all roles, carried or not. */
  readonly bestScore: number;
  /** Its roles, by their places among the different roles of the job. */
  readonly roles: readonly number[];
}

interface WeighedJob {
  readonly moveTime: number;
  readonly branches: readonly WeighedBranch[];
  /** The different roles: what a kit has for one is looked up once for all branches. */
  readonly roles: readonly WeighedRole[];
}

export interface More {
  readonly item: number;
  /** The best service with less of it. */
  readonly known: Service | undefined;
}

export interface ServiceTable {
  /** Best service of a job by a crew that carries at least the kit; undefined when the kit does not do it. */
  readonly best: (job: number, kit: readonly number[]) => Service | undefined;
  /** The same after more of an item came into the kit, from the best service before. */
  readonly bestWithMore: (job: number, kit: readonly number[], more: More) => Service | undefined;
  /** Jobs with an option that needs the item. */
  readonly jobsOf: (item: number) => readonly number[];
}

interface TableRequest {
  readonly program: Program;
  readonly blend: Blend;
  /** What a second costs in the comparison when hours are short. */
  readonly timeWeight: number;
}

export function makeServices(request: TableRequest): ServiceTable {
  const { program, blend } = request;
  const { jobsOf, branchesOf, alikeRolesOf } = indexOf(program);
  const table = program.jobs.map((job, jobPlace): WeighedJob => {
    const { roles, ofBranch } = alikeRolesOf(jobPlace);
    const weighed = roles.map((role) => weighRole({ ...request, role }));
    const branches = job.branches.map((branch, index): WeighedBranch => {
      const weight = blended(blend, (aim) => valveWeight({ aim, program, job, branch }));
      const own = pick(ofBranch, index);
      const bestScore = own.reduce(
        (sum, role) => sum + (pick(weighed, role)[0]?.score ?? Number.POSITIVE_INFINITY),
        weight,
      );
      return { index, weight, bestScore, roles: own };
    });
    return { moveTime: job.moveTime, branches, roles: weighed };
  });
  return {
    best: (job, kit) => bestOf(pick(table, job), kit),
    bestWithMore: (job, kit, { item, known }) =>
      betterOf({ job: pick(table, job), kit, known, places: branchesOf(job, item) }),
    jobsOf: (item) => pick(jobsOf, item),
  };
}

function weighRole(request: TableRequest & { readonly role: readonly Option[] }): WeighedRole {
  const { program, blend, timeWeight, role } = request;
  const weighed = role.map((option, index) => {
    const own = blended(blend, (aim) => optionWeight({ aim, program, option }));
    const { needs, time } = option;
    return { index, needs, weight: own, time, score: own + timeWeight * time };
  });
  return weighed.sort((one, other) => one.score - other.score || one.index - other.index);
}

/** For each different role of a job, the best option that a kit carries; looked up when it is asked for. */
type Carried = (WeighedOption | undefined | null)[];

function bestOf(job: WeighedJob, kit: readonly number[]): Service | undefined {
  const carried: Carried = [];
  let best: WeighedBranch | undefined;
  let bestScore = Number.POSITIVE_INFINITY;
  for (let index = 0; index < job.branches.length; index += 1) {
    const branch = pick(job.branches, index);
    if (branch.bestScore >= bestScore) continue;
    const score = scoreOf({ job, branch, kit, carried }, bestScore);
    if (score >= bestScore) continue;
    best = branch;
    bestScore = score;
  }
  return best === undefined ? undefined : serviceOf({ job, branch: best, kit, carried }, bestScore);
}

interface Known {
  readonly job: WeighedJob;
  readonly kit: readonly number[];
  readonly known: Service | undefined;
  /** Branches that may use what came; any other is as good as it was. */
  readonly places: readonly number[];
}

function betterOf({ job, kit, known, places }: Known): Service | undefined {
  const carried: Carried = [];
  let best: WeighedBranch | undefined;
  let bestScore = known?.score ?? Number.POSITIVE_INFINITY;
  let bestPlace = known?.branch ?? Number.POSITIVE_INFINITY;
  for (let at = 0; at < places.length; at += 1) {
    const branch = pick(job.branches, pick(places, at));
    if (branch.bestScore > bestScore) continue;
    const score = scoreOf({ job, branch, kit, carried }, bestScore);
    if (score === Number.POSITIVE_INFINITY || (score === bestScore && branch.index > bestPlace)) continue;
    best = branch;
    bestScore = score;
    bestPlace = branch.index;
  }
  return best === undefined ? known : serviceOf({ job, branch: best, kit, carried }, bestScore);
}

interface Way {
  readonly job: WeighedJob;
  readonly branch: WeighedBranch;
  readonly kit: readonly number[];
  readonly carried: Carried;
}

function serviceOf(way: Way, score: number): Service {
  const { job, branch } = way;
  const options = branch.roles.flatMap((role) => carriedOption(way, role) ?? []);
  return {
    weight: options.reduce((sum, option) => sum + option.weight, branch.weight),
    time: options.reduce((sum, option) => sum + option.time, job.moveTime),
    branch: branch.index,
    options: options.map((option) => option.index),
    score,
    needs: options.flatMap((option) => option.needs),
  };
}

/** Of the best way through a branch with a kit; infinite when there is none up to the limit. */
function scoreOf(way: Way, limit: number): number {
  const { branch } = way;
  let score = branch.weight;
  for (let at = 0; at < branch.roles.length; at += 1) {
    const chosen = carriedOption(way, pick(branch.roles, at));
    if (chosen === undefined) return Number.POSITIVE_INFINITY;
    score += chosen.score;
    if (score > limit) return Number.POSITIVE_INFINITY;
  }
  return score;
}

function carriedOption({ job, kit, carried }: Way, role: number): WeighedOption | undefined {
  const known = carried[role];
  if (known !== undefined) return known ?? undefined;
  const found = firstCarried(pick(job.roles, role), kit);
  carried[role] = found ?? null;
  return found;
}

function firstCarried(role: WeighedRole, kit: readonly number[]): WeighedOption | undefined {
  for (let place = 0; place < role.length; place += 1) {
    const option = role[place];
    if (option !== undefined && isCarried(option.needs, kit)) return option;
  }
  return undefined;
}

function isCarried(needs: readonly Need[], kit: readonly number[]): boolean {
  for (let place = 0; place < needs.length; place += 1) {
    const need = needs[place];
    if (need !== undefined && (kit[need.item] ?? 0) < need.count) return false;
  }
  return true;
}
