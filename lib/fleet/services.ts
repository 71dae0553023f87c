/*
 * The best way to do one valve of a job with a given kit, kept up to date while a search changes kits.
 * Invariant: after a kit changes, the services of the jobs that use the item are chosen afresh, never adjusted.
 * Not here: which crew does which job (share-out.ts) and which kits to try (search-plan.ts).
 * Read next: share-out.ts.
 */
import { type Aim, type Program, pick } from './program.ts';
import { optionWeight, valveWeight } from './weights.ts';

export interface Service {
  readonly weight: number;
  readonly time: number;
  readonly branch: number;
  readonly options: readonly number[];
}

interface WeighedOption {
  readonly needs: readonly { readonly item: number; readonly count: number }[];
  readonly weight: number;
  readonly time: number;
  /** Weight and time together, by which options are compared. */
  readonly score: number;
}

interface WeighedBranch {
  readonly weight: number;
  readonly score: number;
  readonly roles: readonly (readonly WeighedOption[])[];
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
  readonly aim: Aim;
  readonly timeWeight: number;
}): ServiceTable {
  const { program } = request;
  const table = program.jobs.map((job) =>
    job.branches.map((branch): WeighedBranch => {
      const weight = valveWeight({ aim: request.aim, program, job, branch });
      const roles = branch.roles.map((role) =>
        role.map((option) => {
          const own = optionWeight({ aim: request.aim, program, option });
          return { needs: option.needs, weight: own, time: option.time, score: own + request.timeWeight * option.time };
        }),
      );
      return { weight, score: weight, roles };
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
  let best: Service | undefined;
  let bestScore = Number.POSITIVE_INFINITY;
  for (const [index, branch] of request.branches.entries()) {
    let score = branch.score;
    let weight = branch.weight;
    let time = request.moveTime;
    const options: number[] = [];
    for (const role of branch.roles) {
      const option = bestOption(role, request.kit);
      if (option < 0) break;
      const chosen = pick(role, option);
      score += chosen.score;
      weight += chosen.weight;
      time += chosen.time;
      options.push(option);
    }
    if (options.length < branch.roles.length || score >= bestScore) continue;
    best = { weight, time, branch: index, options };
    bestScore = score;
  }
  return best;
}

function bestOption(role: readonly WeighedOption[], kit: readonly number[]): number {
  let best = -1;
  let bestScore = Number.POSITIVE_INFINITY;
  for (let index = 0; index < role.length; index += 1) {
    const option = pick(role, index);
    if (option.score < bestScore && isCarried(option, kit)) {
      best = index;
      bestScore = option.score;
    }
  }
  return best;
}

function isCarried(option: WeighedOption, kit: readonly number[]): boolean {
  for (const need of option.needs) if ((kit[need.item] ?? 0) < need.count) return false;
  return true;
}
