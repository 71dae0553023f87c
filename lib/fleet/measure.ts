/*
 * Makes a solution out of uses: the kits they need, the time they take, and its measure by every aim, added up afresh.
 * Invariant: a crew's kit holds for each item the most that any one of its valves needs, nothing more.
 * Not here: choosing the uses.
 * Read next: search-plan.ts.
 */
import { type Measures, optionsOf, type Program, pick, type Solution, type Use } from './program.ts';

export function makeSolution(program: Program, uses: readonly Use[]): Solution {
  const kits = Array.from({ length: program.crews }, () => program.items.map(() => 0));
  const times = Array.from({ length: program.crews }, () => 0);
  let useCost = 0;
  let served = 0;
  let secondVisits = 0;
  for (const use of uses) {
    const job = pick(program.jobs, use.job);
    const kit = pick(kits, use.crew);
    let time = job.moveTime;
    for (const option of optionsOf(program, use)) {
      time += option.time;
      useCost += use.qty * option.cost_minor;
      for (const need of option.needs) kit[need.item] = Math.max(pick(kit, need.item), need.count);
    }
    times[use.crew] = pick(times, use.crew) + use.qty * time;
    served += use.qty;
    secondVisits += use.qty * (1 - pick(job.branches, use.branch).chance);
  }
  const time = times.reduce((sum, part) => sum + part, 0);
  const carried = kits.flatMap((kit) => kit.map((count, item) => ({ count, item: pick(program.items, item) })));
  const asked = program.jobs.reduce((sum, job) => sum + job.qty, 0);
  const measures: Measures = {
    unserved: asked - served,
    cost:
      carried.reduce((sum, { count, item }) => sum + count * item.cost_minor, 0) +
      useCost +
      time * program.labour_minor_per_second,
    pieces: carried.reduce((sum, { count, item }) => sum + count * item.pieces, 0),
    time,
    'second visits': secondVisits,
  };
  return { uses, kits, times, measures };
}

/** Whether every crew keeps its hours and the stock suffices; the caller's last check before a plan is given out. */
export function isWithinLimits(program: Program, solution: Solution): boolean {
  const inTime = solution.times.every((time) => time <= program.secondsPerCrew * (1 + 1e-9) + 1e-6);
  const inStock = program.items.every(
    (item, index) => solution.kits.reduce((sum, kit) => sum + pick(kit, index), 0) <= item.free,
  );
  const doneByJob = program.jobs.map(() => 0);
  for (const use of solution.uses) doneByJob[use.job] = pick(doneByJob, use.job) + use.qty;
  return inTime && inStock && program.jobs.every((job, index) => pick(doneByJob, index) <= job.qty);
}
