/*
 * Writes a program as an integer program: valves flow through the roles of each branch, and pieces allow them.
 * Invariant: linking is per job, crew and item (valves ≤ most valves × piece carried); counts of valves are whole numbers.
 * Branches of a job with equal slots share the columns of those: any sharing out of the slots over the branches is a plan.
 * Not here: reading plans back (read-solution.ts), solving (solve-stage.ts).
 * Read next: read-solution.ts.
 */
import type { Entry, ModelBuilder, Row, SparseModel } from '#lib/milp/sparse-model.ts';
import { startModel } from '#lib/milp/sparse-model.ts';
import { addBusyCrews, type BusyCrews } from './busy-crews.ts';
import type { CrewCut } from './crew-cuts.ts';
import type { KitColumn } from './kit-column.ts';
import { type Aim, type Branch, type Job, type Option, type Program, pick } from './program.ts';
import { differentRoles, samenessOf } from './same-roles.ts';
import { overSettled, roomOf, type Settled } from './settled.ts';
import { itemWeight, optionWeight, valveWeight } from './weights.ts';

/** Columns of the options of one branch done by one crew, by role; a role that branches share is one list of columns. */
export interface BranchColumns {
  readonly job: number;
  readonly crew: number;
  readonly branch: number;
  readonly roles: readonly (readonly number[])[];
}

export interface FleetModel {
  readonly sparse: SparseModel;
  readonly kit: readonly KitColumn[];
  readonly branches: readonly BranchColumns[];
  /** By crew, the column that says whether it has work; empty where nothing is told apart by it. */
  readonly busy: readonly number[];
  /** 1 for the columns that say what is carried: branching starts there. */
  readonly priority: Uint8Array;
}

export interface ModelRequest {
  readonly program: Program;
  readonly aim: Aim;
  readonly settled: readonly Settled[];
  /** Valves left out; 0 makes every job an equation, null leaves the number open. */
  readonly unserved: number | null;
  /** What reduced costs have ruled out: items that no better plan carries. */
  readonly excluded?: ReadonlySet<number>;
  /** How many pieces of certain items all crews need together. */
  readonly cuts?: readonly CrewCut[];
  readonly busy?: BusyCrews | undefined;
  /** Anchors tell alike crews apart for HiGHS; own branching does it by orbits, and the two must not meet. */
  readonly crewsAlike: 'anchored' | 'kept alike';
}

/** Growing parts of a model while it is written. */
interface Draft {
  readonly request: ModelRequest;
  readonly model: ModelBuilder;
  readonly kit: KitColumn[];
  readonly branches: BranchColumns[];
  readonly settledEntries: readonly Entry[][];
  /** How far one valve may exceed the least it needs of a settled aim. */
  readonly settledRoom: readonly number[];
  readonly served: Entry[];
  readonly timeByCrew: readonly Entry[][];
  readonly kitByItem: readonly KitColumn[][];
}

export function buildModel(request: ModelRequest): FleetModel {
  const { program } = request;
  const draft: Draft = {
    request,
    model: startModel(),
    kit: [],
    branches: [],
    settledEntries: request.settled.map(() => []),
    settledRoom: request.settled.map((settled) => roomOf({ ...request, settled })),
    served: [],
    timeByCrew: Array.from({ length: program.crews }, () => []),
    kitByItem: program.items.map(() => []),
  };
  addKits(draft);
  for (const [index, job] of program.jobs.entries()) addJob({ draft, index, job });
  addShared(draft);
  if (request.crewsAlike === 'anchored') addAnchors(draft);
  for (const cut of request.cuts ?? []) draft.model.row(cutRow(draft.kit, cut));
  const busy = request.busy === undefined ? [] : addBusyCrews({ ...request, ...draft, busy: request.busy });
  const sparse = draft.model.build();
  const priority = new Uint8Array(sparse.columns);
  for (const column of draft.kit) priority[column.column] = 1;
  return { sparse, kit: draft.kit, branches: draft.branches, busy, priority };
}

/** The row of a cut: only the first piece of an item that a crew carries counts. */
export function cutRow(kit: readonly KitColumn[], cut: CrewCut): Row {
  const items = new Set(cut.items);
  const columns = kit.filter((one) => items.has(one.item) && one.step === one.count);
  return { lower: cut.pieces, upper: Number.POSITIVE_INFINITY, entries: columns.map((one): Entry => [one.column, 1]) };
}

function addKits(draft: Draft): void {
  const { request, model, kit, kitByItem } = draft;
  const { program, aim } = request;
  const counts = neededCounts(program);
  for (const [item, levels] of counts.entries()) {
    if (request.excluded?.has(item) === true) continue;
    const weight = itemWeight(aim, pick(program.items, item));
    for (let crew = 0; crew < program.crews; crew += 1) {
      let below: KitColumn | undefined;
      for (const count of levels) {
        const step = count - (below?.count ?? 0);
        const column = model.column({ cost: step * weight, lower: 0, upper: 1, integer: true });
        const added = { column, crew, item, count, step };
        kit.push(added);
        pick(kitByItem, item).push(added);
        for (const [index, settled] of request.settled.entries()) {
          pushEntry(
            pick(draft.settledEntries, index),
            column,
            step * itemWeight(settled.aim, pick(program.items, item)),
          );
        }
        if (below !== undefined)
          model.row({
            lower: Number.NEGATIVE_INFINITY,
            upper: 0,
            entries: [
              [column, 1],
              [below.column, -1],
            ],
          });
        below = added;
      }
    }
  }
}

/** The distinct counts in which options need each item, ascending. */
export function neededCounts(program: Program): readonly (readonly number[])[] {
  const sets = program.items.map(() => new Set<number>());
  for (const role of differentRoles(program)) {
    for (const option of role) for (const need of option.needs) pick(sets, need.item).add(need.count);
  }
  return sets.map((set) => [...set].sort((a, b) => a - b));
}

function addJob(request: { readonly draft: Draft; readonly index: number; readonly job: Job }): void {
  const { draft, index, job } = request;
  const { program } = draft.request;
  const most = mostValves(program, job);
  const all: Entry[] = [];
  for (let crew = 0; crew < program.crews; crew += 1) {
    /** Per item and needed count: the columns that use it. */
    const users = new Map<number, { count: number; column: number }[]>();
    const slots = new Map<string, SharedSlot>();
    for (const [branchIndex, branch] of job.branches.entries()) {
      const roles = addBranch({ draft, job, branch, crew, most, users, slots });
      if (roles === undefined) continue;
      draft.branches.push({ job: index, crew, branch: branchIndex, roles });
      for (const column of pick(roles, 0)) if (column >= 0) all.push([column, 1]);
    }
    for (const { columns, cores } of slots.values()) {
      draft.model.row({ lower: 0, upper: 0, entries: [...entriesOf(columns, 1), ...cores] });
    }
    addLinks({ draft, crew, most, users });
  }
  draft.served.push(...all);
  if (all.length > 0) {
    draft.model.row({ lower: draft.request.unserved === 0 ? job.qty : 0, upper: job.qty, entries: all });
  }
}

/** How many valves of a job one crew has the hours for. */
export function mostValves(program: Program, job: Job): number {
  const least = Math.min(
    ...job.branches.map((branch) =>
      branch.roles.reduce((sum, role) => sum + Math.min(...role.map((option) => option.time)), job.moveTime),
    ),
  );
  return least > 0 ? Math.min(job.qty, Math.floor((program.secondsPerCrew + 1e-9) / least)) : job.qty;
}

/** A slot that branches of a job share: as many valves take one of its options as are done in all of them. */
interface SharedSlot {
  /** −1 where the option is excluded. */
  readonly columns: readonly number[];
  readonly cores: Entry[];
}

interface BranchRequest {
  readonly draft: Draft;
  readonly job: Job;
  readonly branch: Branch;
  readonly crew: number;
  readonly most: number;
  readonly users: Map<number, { count: number; column: number }[]>;
  readonly slots: Map<string, SharedSlot>;
}

function addBranch(request: BranchRequest): readonly (readonly number[])[] | undefined {
  const { draft, job, branch, slots } = request;
  const isTooMuch = overSettled({ ...draft.request, rooms: draft.settledRoom, job, branch });
  const isOut = (option: Option) =>
    option.needs.some((need) => draft.request.excluded?.has(need.item) === true) || isTooMuch(option);
  if (branch.roles.some((role) => role.every(isOut))) return undefined;
  const cores: number[] = [];
  return branch.roles.map((role, roleIndex) => {
    if (roleIndex === 0) {
      cores.push(...addRole({ ...request, role, isOut, isCore: true }));
      return cores;
    }
    const key = `${roleIndex} ${role.map((option) => (isOut(option) ? '-' : '+')).join('')} ${samenessOf(role)}`;
    const slot = slots.get(key) ?? { columns: addRole({ ...request, role, isOut, isCore: false }), cores: [] };
    slots.set(key, slot);
    slot.cores.push(...entriesOf(cores, -1));
    return slot.columns;
  });
}

function addRole(
  request: BranchRequest & {
    readonly role: readonly Option[];
    readonly isOut: (option: Option) => boolean;
    readonly isCore: boolean;
  },
): readonly number[] {
  const { role, isOut, isCore, users } = request;
  // Slots of one duration need no whole numbers: all valves may take the cheapest one carried.
  const integer = isCore || role.some((option) => option.time !== pick(role, 0).time);
  return role.map((option) => {
    if (isOut(option)) return -1;
    const column = addOption({ ...request, option, integer });
    for (const { item, count } of option.needs) {
      const list = users.get(item);
      if (list === undefined) users.set(item, [{ count, column }]);
      else list.push({ count, column });
    }
    return column;
  });
}

function entriesOf(columns: readonly number[], value: number): readonly Entry[] {
  return columns.filter((column) => column >= 0).map((column): Entry => [column, value]);
}

function addOption(request: {
  readonly draft: Draft;
  readonly job: Job;
  readonly branch: Branch;
  readonly option: Option;
  readonly crew: number;
  readonly most: number;
  readonly integer: boolean;
  readonly isCore: boolean;
}): number {
  const { draft, job, branch, option, crew, most, integer, isCore } = request;
  const { program, aim, settled } = draft.request;
  const weight = (of: Aim) =>
    optionWeight({ aim: of, program, option }) + (isCore ? valveWeight({ aim: of, program, job, branch }) : 0);
  const column = draft.model.column({ cost: weight(aim), lower: 0, upper: most, integer });
  pushEntry(pick(draft.timeByCrew, crew), column, option.time + (isCore ? job.moveTime : 0));
  for (const [index, one] of settled.entries()) pushEntry(pick(draft.settledEntries, index), column, weight(one.aim));
  return column;
}

function pushEntry(entries: Entry[], column: number, value: number): void {
  if (value !== 0) entries.push([column, value]);
}

function addLinks(request: {
  readonly draft: Draft;
  readonly crew: number;
  readonly most: number;
  readonly users: ReadonlyMap<number, readonly { readonly count: number; readonly column: number }[]>;
}): void {
  const { draft, crew, most, users } = request;
  for (const [item, list] of users) {
    for (const kit of pick(draft.kitByItem, item)) {
      if (kit.crew !== crew || !list.some((user) => user.count === kit.count)) continue;
      // Options that need more than this count need this one too, which makes the row tighter.
      const entries = list.filter((user) => user.count >= kit.count).map((user): Entry => [user.column, 1]);
      draft.model.row({ lower: Number.NEGATIVE_INFINITY, upper: 0, entries: [...entries, [kit.column, -most]] });
    }
  }
}

/** Rows that tie jobs together: hours, stock, valves served, aims already settled. */
function addShared(draft: Draft): void {
  const { request, model, timeByCrew, kitByItem, served, settledEntries } = draft;
  const { program } = request;
  if (mostTime(program) > program.secondsPerCrew) {
    const most = mostValvesOfCrew(program);
    const total = program.jobs.reduce((sum, job) => sum + job.qty, 0);
    for (const [crew, entries] of timeByCrew.entries()) {
      model.row({ lower: 0, upper: program.secondsPerCrew, entries });
      // Where hours decide how many are served, the whole number that fits is a tighter row than the hours.
      if (most < total && request.unserved !== 0) {
        const cores = draft.branches
          .filter((one) => one.crew === crew)
          .flatMap((one) => entriesOf(pick(one.roles, 0), 1));
        model.row({ lower: 0, upper: most, entries: cores });
      }
    }
  }
  for (const [item, columns] of kitByItem.entries()) {
    const { free } = pick(program.items, item);
    if (columns.reduce((sum, column) => sum + column.step, 0) <= free) continue;
    model.row({ lower: 0, upper: free, entries: columns.map((one): Entry => [one.column, one.step]) });
  }
  const asked = program.jobs.reduce((sum, job) => sum + job.qty, 0);
  if (request.unserved !== null && request.unserved > 0) {
    model.row({ lower: asked - request.unserved, upper: asked - request.unserved, entries: served });
  }
  for (const [index, { most }] of request.settled.entries()) {
    const entries = pick(settledEntries, index);
    if (entries.length > 0) model.row({ lower: Number.NEGATIVE_INFINITY, upper: most, entries });
  }
}

/** Time of the whole work done in the slowest way: below a crew's hours the clock cannot bind. */
function mostTime(program: Program): number {
  let sum = 0;
  for (const job of program.jobs) {
    let slowest = 0;
    for (const branch of job.branches) {
      const time = branch.roles.reduce((total, role) => total + Math.max(...role.map((one) => one.time)), job.moveTime);
      slowest = Math.max(slowest, time);
    }
    sum += job.qty * slowest;
  }
  return sum;
}

/** Valves that one crew has the hours for if it takes the shortest ones and has every piece. */
function mostValvesOfCrew(program: Program): number {
  const times = program.jobs
    .map((job) => ({ qty: job.qty, time: Math.min(...job.branches.map((branch) => fastest(branch, job.moveTime))) }))
    .sort((a, b) => a.time - b.time);
  let left = program.secondsPerCrew + 1e-6;
  let valves = 0;
  for (const { qty, time } of times) {
    const fit = time > 0 ? Math.min(qty, Math.floor(left / time)) : qty;
    valves += fit;
    left -= fit * time;
    if (fit < qty) break;
  }
  return valves;
}

/** Crews are alike: the longest job starts in the first crew, the next longest in the first or second, and so on. */
function addAnchors(draft: Draft): void {
  const { program, unserved } = draft.request;
  if (unserved !== 0 || program.crews === 1) return;
  for (const [rank, job] of anchorJobs(program).entries()) {
    const entries: Entry[] = [];
    for (const branch of draft.branches) {
      if (branch.job === job && branch.crew <= rank) entries.push(...entriesOf(pick(branch.roles, 0), 1));
    }
    if (entries.length > 0) draft.model.row({ lower: 1, upper: Number.POSITIVE_INFINITY, entries });
  }
}

/** One job fewer than there are crews, longest first. */
export function anchorJobs(program: Program): readonly number[] {
  const length = (job: Job) => job.qty * Math.min(...job.branches.map((branch) => fastest(branch, job.moveTime)));
  return program.jobs
    .map((job, index) => ({ index, length: job.branches.length === 0 ? -1 : length(job) }))
    .filter(({ index }) => pick(program.jobs, index).branches.length > 0)
    .sort((a, b) => b.length - a.length || a.index - b.index)
    .slice(0, program.crews - 1)
    .map(({ index }) => index);
}

function fastest(branch: Branch, moveTime: number): number {
  return branch.roles.reduce((sum, role) => sum + Math.min(...role.map((option) => option.time)), moveTime);
}
