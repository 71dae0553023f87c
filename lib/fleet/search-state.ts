/*
 * Kits a search tries: what they come to, changes that are made only where they make it lower, and the way back.
 * Invariant: a change that is refused leaves all as it was; what is refused without sharing out counts as the same effort.
 * Not here: which changes are tried, and in which order (search-plan.ts).
 * Read next: services.ts.
 */
import type { Random } from '#lib/kernel/random.ts';
import { type Need, type Program, pick } from './program.ts';
import type { Service, ServiceTable } from './services.ts';
import { type Sharing, shareOut } from './share-out.ts';

export interface State {
  readonly program: Program;
  readonly table: ServiceTable;
  readonly order: readonly number[];
  readonly counts: readonly (readonly number[])[];
  readonly weights: readonly number[];
  /** Items that stand beside an item in some role: candidates to swap with. */
  readonly neighbours: readonly (readonly number[])[];
  /** What the options need, each set once. */
  readonly needs: readonly (readonly Need[])[];
  readonly sharing: Sharing;
  kits: number[][];
  services: (Service | undefined)[][];
  stock: number[];
  score: Score;
  visits: number;
  readonly random: Random;
}

interface Score {
  readonly unserved: number;
  readonly weight: number;
  /** Part of the weight that what is carried has. */
  readonly carried: number;
}

export function scoreOf(state: State): Score {
  const { unserved, weight } = shareOut(state);
  state.visits += state.order.length;
  let carried = 0;
  for (const kit of state.kits) {
    for (let item = 0; item < kit.length; item += 1) carried += (kit[item] ?? 0) * (state.weights[item] ?? 0);
  }
  return { unserved, weight: weight + carried, carried };
}

export interface Change {
  readonly crew: number;
  readonly item: number;
  readonly count: number;
}

/** Makes the changes if they improve the score, else puts everything back. */
export function tryChanges(state: State, changes: readonly Change[]): boolean {
  const before = state.score;
  const carried = carriedAfter(state, changes);
  const done = apply(state, changes);
  if (done === undefined) return false;
  const { undo, isHopeless } = done;
  if (isHopeless || cannotBeLower(state, { carried, before })) {
    // What was decided without sharing out is the same effort, so that a limit on effort gives the same plan.
    state.visits += state.order.length;
    undo();
    return false;
  }
  const after = scoreOf(state);
  if (isLower(after, before)) {
    state.score = after;
    return true;
  }
  undo();
  return false;
}

/** Weight of all kits once the changes are made, to the last digits of a sum in another order. */
function carriedAfter(state: State, changes: readonly Change[]): number {
  return changes.reduce((sum, { crew, item, count }) => {
    return sum + (count - pick(pick(state.kits, crew), item)) * pick(state.weights, item);
  }, state.score.carried);
}

/** Rounding of sums in another order, as a part of what is summed. */
const ROUNDING = 1e-9;

/** Whether even a crew with hours without end for each job would not make the score lower; sharing out can only be worse. */
function cannotBeLower(
  state: State,
  { carried, before }: { readonly carried: number; readonly before: Score },
): boolean {
  const { program, services } = state;
  let unserved = 0;
  let weight = carried;
  for (const job of state.order) {
    let least = Number.POSITIVE_INFINITY;
    for (let crew = 0; crew < services.length; crew += 1) {
      const service = services[crew]?.[job];
      if (service !== undefined && service.weight < least) least = service.weight;
    }
    const { qty } = pick(program.jobs, job);
    if (least === Number.POSITIVE_INFINITY) unserved += qty;
    else weight += qty * least;
  }
  if (unserved !== before.unserved) return unserved > before.unserved;
  return weight > before.weight + ROUNDING * (Math.abs(before.weight) + before.carried);
}

export function isLower(a: Score, b: Score): boolean {
  return a.unserved < b.unserved || (a.unserved === b.unserved && a.weight < b.weight - 1e-9);
}

interface Applied {
  readonly undo: () => void;
  /** A valve that was done is done by nobody any more; the services are then not worked out to the end. */
  readonly isHopeless: boolean;
}

export function apply(state: State, changes: readonly Change[]): Applied | undefined {
  const old: Change[] = [];
  const oldServices: Replaced[] = [];
  const restock = (change: Change): void => {
    const kit = pick(state.kits, change.crew);
    state.stock[change.item] = pick(state.stock, change.item) + pick(kit, change.item) - change.count;
    kit[change.item] = change.count;
  };
  for (const change of changes) {
    old.push({ ...change, count: pick(pick(state.kits, change.crew), change.item) });
    restock(change);
  }
  if (changes.some((change) => pick(state.stock, change.item) < 0)) {
    for (const change of old.reverse()) restock(change);
    return undefined;
  }
  const isLess = ({ crew, item, count }: Change): boolean => count > pick(pick(state.kits, crew), item);
  for (const { item } of changes) state.visits += state.table.jobsOf(item).length;
  // First what came: a job that nobody does then is one that nobody does after all of the changes.
  for (const one of old) if (!isLess(one)) serveWithMore(state, one, oldServices);
  const isHopeless = old.some((one) => isLess(one) && !serveWithLess(state, one, oldServices));
  const undo = (): void => {
    for (const change of old.reverse()) restock(change);
    for (const { crew, job, service } of oldServices.reverse()) pick(state.services, crew)[job] = service;
  };
  return { undo, isHopeless };
}

interface Replaced {
  readonly crew: number;
  readonly job: number;
  readonly service: Service | undefined;
}

function serveWithMore(state: State, { crew, item }: Change, replaced: Replaced[]): void {
  const services = pick(state.services, crew);
  for (const job of state.table.jobsOf(item)) {
    const service = services[job];
    const now = state.table.bestWithMore(job, pick(state.kits, crew), { item, known: service });
    if (now === service) continue;
    replaced.push({ crew, job, service });
    services[job] = now;
  }
}

/** False, and not to the end, where a valve that was done is done by nobody any more. */
function serveWithLess(state: State, { crew, item }: Change, replaced: Replaced[]): boolean {
  const services = pick(state.services, crew);
  for (const job of state.table.jobsOf(item)) {
    const service = services[job];
    // The best way stays the best when something that it does not need is gone.
    if (service?.needs.some((need) => need.item === item) !== true) continue;
    const now = state.table.best(job, pick(state.kits, crew));
    replaced.push({ crew, job, service });
    services[job] = now;
    if (now === undefined && state.score.unserved === 0 && isDoneByNobody(state, job)) return false;
  }
  return true;
}

function isDoneByNobody({ services }: State, job: number): boolean {
  return services.every((row) => row[job] === undefined);
}

interface Snapshot {
  readonly kits: readonly (readonly number[])[];
  readonly services: readonly (readonly (Service | undefined)[])[];
  readonly stock: readonly number[];
  readonly score: Score;
}

export function snapshot(state: State): Snapshot {
  return {
    kits: state.kits.map((kit) => [...kit]),
    services: state.services.map((row) => [...row]),
    stock: [...state.stock],
    score: state.score,
  };
}

export function restore(state: State, kept: Snapshot): void {
  state.kits = kept.kits.map((kit) => [...kit]);
  state.services = kept.services.map((row) => [...row]);
  state.stock = [...kept.stock];
  state.score = kept.score;
}
