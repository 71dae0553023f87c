/*
 * Between plans and the columns of a model: a checked answer read as uses, and a plan written as a starting point.
 * Invariant: counts of cores and slots are joined so that every valve has one option in every role.
 * Not here: the model itself (build-model.ts).
 * Read next: solve-stage.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { at } from '#lib/milp/sparse-model.ts';
import { anchorJobs, type BranchColumns, type FleetModel } from './build-model.ts';
import { makeSolution } from './measure.ts';
import { type Branch, type Program, pick, type Solution, type Use } from './program.ts';

export function readSolution(request: {
  readonly program: Program;
  readonly model: FleetModel;
  readonly values: Float64Array;
}): Solution {
  const { program, model, values } = request;
  const carried = carriedCounts({ program, model, values });
  // What branches that share a slot have left of it for the next one.
  const left = Float64Array.from(values);
  const uses = model.branches.flatMap((columns) => {
    const branch = pick(pick(program.jobs, columns.job).branches, columns.branch);
    const kit = pick(carried, columns.crew);
    return joinRoles(columns, roleCounts({ program, branch, columns, kit, left }));
  });
  return makeSolution(program, uses);
}

function carriedCounts(request: {
  readonly program: Program;
  readonly model: FleetModel;
  readonly values: Float64Array;
}): readonly (readonly number[])[] {
  const { program, model, values } = request;
  const carried = Array.from({ length: program.crews }, () => program.items.map(() => 0));
  for (const { column, crew, item, count } of model.kit) {
    const kit = pick(carried, crew);
    if (at(values, column) > 0.5) kit[item] = Math.max(pick(kit, item), count);
  }
  return carried;
}

/** How many valves take each option, by role; a role that was left fractional takes its cheapest carried option. */
function roleCounts(request: {
  readonly program: Program;
  readonly branch: Branch;
  readonly columns: BranchColumns;
  readonly kit: readonly number[];
  readonly left: Float64Array;
}): readonly (readonly number[])[] {
  const { branch, columns, kit, left } = request;
  const countsOf = (role: number) => pick(columns.roles, role).map((column) => (column < 0 ? 0 : at(left, column)));
  const total = Math.round(countsOf(0).reduce((sum, count) => sum + count, 0));
  return branch.roles.map((role, index) => {
    const counts = countsOf(index);
    if (counts.every((count) => Math.abs(count - Math.round(count)) < 1e-6)) {
      return takeFrom({ left, columns: pick(columns.roles, index), counts: counts.map(Math.round), total });
    }
    let cheapest = -1;
    for (const [option, { needs, cost_minor }] of role.entries()) {
      const isCarried = needs.every((need) => pick(kit, need.item) >= need.count);
      if (isCarried && (cheapest < 0 || cost_minor < pick(role, cheapest).cost_minor)) cheapest = option;
    }
    invariant(cheapest >= 0, 'A crew that does a valve carries an option for each of its roles.');
    return role.map((_, option) => (option === cheapest ? total : 0));
  });
}

/** As many as the branch does, in order. */
function takeFrom(request: {
  readonly left: Float64Array;
  readonly columns: readonly number[];
  readonly counts: readonly number[];
  readonly total: number;
}): readonly number[] {
  let open = request.total;
  return request.counts.map((count, place) => {
    const taken = Math.min(open, count);
    open -= taken;
    const column = pick(request.columns, place);
    if (column >= 0) request.left[column] = at(request.left, column) - taken;
    return taken;
  });
}

/** Pairs the counts of the roles off against each other, in order. */
function joinRoles(columns: BranchColumns, counts: readonly (readonly number[])[]): readonly Use[] {
  const left = counts.map((role) => [...role]);
  const uses: Use[] = [];
  for (;;) {
    const options = left.map((role) => role.findIndex((count) => count > 0));
    if (options.some((option) => option < 0)) return uses;
    const qty = Math.min(...left.map((role, index) => pick(role, pick(options, index))));
    for (const [index, role] of left.entries()) {
      const option = pick(options, index);
      role[option] = pick(role, option) - qty;
    }
    uses.push({ job: columns.job, crew: columns.crew, branch: columns.branch, options, qty });
  }
}

export function writeStart(request: {
  readonly program: Program;
  readonly model: FleetModel;
  readonly solution: Solution;
}): Float64Array {
  const { program, model } = request;
  const solution = anchored(program, request.solution);
  const values = new Float64Array(model.sparse.columns);
  for (const { column, crew, item, count } of model.kit) {
    values[column] = pick(pick(solution.kits, crew), item) >= count ? 1 : 0;
  }
  const columnsOf = new Map(model.branches.map((one) => [`${one.job} ${one.crew} ${one.branch}`, one]));
  for (const use of solution.uses) {
    const columns = columnsOf.get(`${use.job} ${use.crew} ${use.branch}`);
    if (columns === undefined) continue;
    for (const [role, option] of use.options.entries()) {
      const column = pick(pick(columns.roles, role), option);
      if (column >= 0) values[column] = at(values, column) + use.qty;
    }
  }
  return values;
}

/** The same plan with crews renumbered so that it meets the anchor rows. */
export function anchored(program: Program, solution: Solution): Solution {
  if (program.crews === 1) return solution;
  const order: number[] = [];
  for (const job of anchorJobs(program)) {
    const crews = solution.uses.filter((use) => use.job === job).map((use) => use.crew);
    if (crews.some((crew) => order.includes(crew))) continue;
    const first = crews[0];
    if (first !== undefined) order.push(first);
  }
  for (let crew = 0; crew < program.crews; crew += 1) if (!order.includes(crew)) order.push(crew);
  return makeSolution(
    program,
    solution.uses.map((use) => ({ ...use, crew: order.indexOf(use.crew) })),
  );
}
