/*
 * Tells plans apart by how many crews have work: a crew that has any carries at least the least kit that does one valve.
 * Invariant: the cases together hold every plan that serves all valves, up to exchanging crews; an idle crew carries nothing.
 * Not here: the search through the cases (../milp/branch-and-bound.ts).
 * Read next: build-model.ts.
 */
import type { Fix } from '#lib/milp/choose-branch.ts';
import type { Entry, ModelBuilder } from '#lib/milp/sparse-model.ts';
import type { KitColumn } from './kit-column.ts';
import { type Aim, type Branch, type Program, pick } from './program.ts';
import { itemWeight } from './weights.ts';

export interface BusyCrews {
  /** Weight, by the aim, of the lightest kit that does one valve of any job. */
  readonly leastKit: number;
  /** The whole work in the fastest way takes the hours of so many crews. */
  readonly fewest: number;
}

/**
 * Undefined where the cases tell nothing (one crew, valves left out, kits that weigh nothing) or do not pay:
 * with three crews they share out the effort and left a wider gap in the same time (3.4 % against 2.3 % on a list of 200).
 */
export function busyCrewsOf(request: {
  readonly program: Program;
  readonly aim: Aim;
  readonly unserved: number | null;
}): BusyCrews | undefined {
  const { program, aim, unserved } = request;
  if (program.crews !== 2 || unserved !== 0) return undefined;
  const kits = program.jobs.flatMap((job) => job.branches.map((branch) => leastKitOf({ program, aim, branch })));
  const leastKit = Math.min(...kits);
  if (!Number.isFinite(leastKit) || leastKit <= 0) return undefined;
  const fewest = Math.max(1, Math.ceil(leastWork(program) / (program.secondsPerCrew * (1 + 1e-9) + 1e-6)));
  return fewest > program.crews ? undefined : { leastKit, fewest };
}

/** No item stands in two roles of a branch, so the least of every role add up. */
function leastKitOf(request: { readonly program: Program; readonly aim: Aim; readonly branch: Branch }): number {
  const { program, aim, branch } = request;
  const weigh = (needs: readonly { readonly item: number; readonly count: number }[]) =>
    needs.reduce((sum, need) => sum + need.count * itemWeight(aim, pick(program.items, need.item)), 0);
  return branch.roles.reduce((sum, role) => sum + Math.min(...role.map((option) => weigh(option.needs))), 0);
}

function leastWork(program: Program): number {
  return program.jobs.reduce((sum, job) => {
    const ways = job.branches.map((branch) =>
      branch.roles.reduce((time, role) => time + Math.min(...role.map((option) => option.time)), job.moveTime),
    );
    return sum + job.qty * Math.min(...ways);
  }, 0);
}

/** A column for each crew, 1 where it has work, and the row that its kit then weighs at least so much. */
export function addBusyCrews(request: {
  readonly model: ModelBuilder;
  readonly program: Program;
  readonly aim: Aim;
  readonly kit: readonly KitColumn[];
  readonly busy: BusyCrews;
}): readonly number[] {
  const { model, program, aim, kit, busy } = request;
  return Array.from({ length: program.crews }, (_, crew) => {
    const column = model.column({ cost: 0, lower: 0, upper: 1, integer: true });
    const carried = kit
      .filter((one) => one.crew === crew)
      .map((one): Entry => [one.column, one.step * itemWeight(aim, pick(program.items, one.item))]);
    model.row({ lower: 0, upper: Number.POSITIVE_INFINITY, entries: [...carried, [column, -busy.leastKit]] });
    return column;
  });
}

/** The cases: the first crews have work, the others are idle and carry nothing. */
export function busyCases(request: {
  readonly model: { readonly busy: readonly number[]; readonly kit: readonly KitColumn[] };
  readonly busy: BusyCrews;
}): readonly (readonly Fix[])[] {
  const { model, busy } = request;
  const crews = model.busy.length;
  return Array.from({ length: crews - busy.fewest + 1 }, (_, more) => {
    const working = busy.fewest + more;
    const marks = model.busy.map(
      (column, crew): Fix =>
        crew < working
          ? { column, lower: 1, upper: Number.POSITIVE_INFINITY }
          : { column, lower: Number.NEGATIVE_INFINITY, upper: 0 },
    );
    const idle = model.kit
      .filter(({ crew }) => crew >= working)
      .map(({ column }): Fix => ({ column, lower: Number.NEGATIVE_INFINITY, upper: 0 }));
    return [...marks, ...idle];
  });
}
