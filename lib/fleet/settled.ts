/*
 * Aims already settled, and which options a plan that keeps to them can never use.
 * Invariant: an option is ruled out only if one valve done with it gives the aim up though all else is done in the best way for it.
 * Not here: the row that keeps a plan to the aim (build-model.ts).
 * Read next: build-model.ts.
 */
import { type Aim, type Branch, type Job, type Option, type Program, pick } from './program.ts';
import { optionWeight, valveWeight } from './weights.ts';

/** An aim already settled: later stages must not give it up. */
export interface Settled {
  readonly aim: Aim;
  readonly most: number;
}

/** Sums in another order differ in the last digits: an option is ruled out only beyond this part of the aim. */
const ROUNDING = 1e-6;

/** How far one valve may exceed the least it needs, if every valve served is one of those that need least, done in the best way. */
export function roomOf(request: {
  readonly program: Program;
  readonly unserved: number | null;
  readonly settled: Settled;
}): number {
  const { program, unserved, settled } = request;
  const { aim, most } = settled;
  return most - leastOfUses({ program, aim, unserved }) + ROUNDING * Math.max(1, Math.abs(most));
}

/** What doing valves takes at the least, pieces apart: those valves that need least, in the best way for each. */
export function leastOfUses(request: {
  readonly program: Program;
  readonly aim: Aim;
  readonly unserved: number | null;
}): number {
  const { program, aim, unserved } = request;
  const valves = program.jobs
    .filter((job) => job.branches.length > 0)
    .map((job) => ({ qty: job.qty, least: leastOfJob({ program, aim, job }) }))
    .sort((a, b) => a.least - b.least);
  const asked = program.jobs.reduce((sum, job) => sum + job.qty, 0);
  let open = unserved === null ? 0 : asked - unserved;
  let least = 0;
  for (const one of valves) {
    const qty = Math.min(open, one.qty);
    least += qty * one.least;
    open -= qty;
  }
  return least;
}

/** Tells the options of a branch that no valve can take without giving up a settled aim. */
export function overSettled(request: {
  readonly program: Program;
  readonly settled: readonly Settled[];
  /** By settled aim. */
  readonly rooms: readonly number[];
  readonly job: Job;
  readonly branch: Branch;
}): (option: Option) => boolean {
  const { program, settled, rooms, job, branch } = request;
  const over = new Set<Option>();
  for (const [index, { aim }] of settled.entries()) {
    const most = pick(rooms, index) + leastOfJob({ program, aim, job });
    const least = leastOfBranch({ program, aim, job, branch });
    for (const role of branch.roles) {
      const best = leastOfRole({ program, aim, role });
      for (const option of role) if (least - best + optionWeight({ aim, program, option }) > most) over.add(option);
    }
  }
  return (option) => over.has(option);
}

function leastOfJob(request: { readonly program: Program; readonly aim: Aim; readonly job: Job }): number {
  return Math.min(...request.job.branches.map((branch) => leastOfBranch({ ...request, branch })));
}

function leastOfBranch(request: {
  readonly program: Program;
  readonly aim: Aim;
  readonly job: Job;
  readonly branch: Branch;
}): number {
  const { program, aim, branch } = request;
  return branch.roles.reduce((sum, role) => sum + leastOfRole({ program, aim, role }), valveWeight(request));
}

function leastOfRole(request: {
  readonly program: Program;
  readonly aim: Aim;
  readonly role: readonly Option[];
}): number {
  return Math.min(...request.role.map((option) => optionWeight({ ...request, option })));
}
