/*
 * The best way to do one valve of a job with a given kit, kept up to date while a search changes kits.
 * Invariant: after a kit changes, the services of the jobs that use the item are chosen afresh, never adjusted.
 * Not here: which crew does which job (share-out.ts) and which kits to try (search-plan.ts).
 * Read next: share-out.ts.
 */
import { type Need, type Program, pick } from './program.ts';
import { type Blend, blended, optionWeight, valveWeight } from './weights.ts';

export interface Service {
  readonly weight: number;
  readonly time: number;
  readonly branch: number;
  readonly options: readonly number[];
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
  readonly weight: number;
  readonly score: number;
  /** Score of the best options of all roles, carried or not. */
  readonly bestScore: number;
  readonly roles: readonly WeighedRole[];
}

export interface ServiceTable {
  /** Best service of a job by a crew that carries at least the kit; undefined when the kit does not do it. */
  readonly best: (job: number, kit: readonly number[]) => Service | undefined;
  /** Jobs with an option that needs the item. */
  readonly jobsOf: (item: number) => readonly number[];
}

/** `timeWeight` is what a second costs in the comparison when hours are short. */
export function makeServices(request: {
  readonly program: Program;
  readonly blend: Blend;
  readonly timeWeight: number;
}): ServiceTable {
  const { program, blend } = request;
  const table = program.jobs.map((job) =>
    job.branches.map((branch): WeighedBranch => {
      const weight = blended(blend, (aim) => valveWeight({ aim, program, job, branch }));
      const roles = branch.roles.map((role): WeighedRole => {
        const weighed = role.map((option, index) => {
          const own = blended(blend, (aim) => optionWeight({ aim, program, option }));
          const { needs, time } = option;
          return { index, needs, weight: own, time, score: own + request.timeWeight * time };
        });
        return weighed.sort((one, other) => one.score - other.score || one.index - other.index);
      });
      const bestScore = roles.reduce((sum, role) => sum + (role[0]?.score ?? Number.POSITIVE_INFINITY), weight);
      return { weight, score: weight, bestScore, roles };
    }),
  );
  const jobsOf: number[][] = program.items.map(() => []);
  for (const [index, job] of program.jobs.entries()) {
    const items = new Set(
      job.branches.flatMap((branch) => branch.roles.flat().flatMap((one) => one.needs.map((need) => need.item))),
    );
    for (const item of items) pick(jobsOf, item).push(index);
  }
  return {
    best: (job, kit) => bestOf({ branches: pick(table, job), kit, moveTime: pick(program.jobs, job).moveTime }),
    jobsOf: (item) => pick(jobsOf, item),
  };
}

function bestOf(request: {
  readonly branches: readonly WeighedBranch[];
  readonly kit: readonly number[];
  readonly moveTime: number;
}): Service | undefined {
  const { branches, kit, moveTime } = request;
  let best: { readonly branch: number; readonly options: readonly WeighedOption[] } | undefined;
  let bestScore = Number.POSITIVE_INFINITY;
  for (let index = 0; index < branches.length; index += 1) {
    const branch = pick(branches, index);
    if (branch.bestScore >= bestScore) continue;
    const score = scoreOf(branch, kit, bestScore);
    if (score >= bestScore) continue;
    best = { branch: index, options: branch.roles.flatMap((role) => firstCarried(role, kit) ?? []) };
    bestScore = score;
  }
  if (best === undefined) return undefined;
  return {
    weight: best.options.reduce((sum, option) => sum + option.weight, pick(branches, best.branch).weight),
    time: best.options.reduce((sum, option) => sum + option.time, moveTime),
    branch: best.branch,
    options: best.options.map((option) => option.index),
    needs: best.options.flatMap((option) => option.needs),
  };
}

/** Of the best way through a branch with a kit; infinite when there is none below the limit. */
function scoreOf(branch: WeighedBranch, kit: readonly number[], limit: number): number {
  let { score } = branch;
  for (const role of branch.roles) {
    const chosen = firstCarried(role, kit);
    if (chosen === undefined) return Number.POSITIVE_INFINITY;
    score += chosen.score;
    if (score >= limit) return Number.POSITIVE_INFINITY;
  }
  return score;
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
