/*
 * Where the stock falls short: the plan solved again as if every model were there for every crew, and what it would carry beyond what is free.
 * Invariant: demand beyond what exists is told, with the valves it would serve; nothing is dropped in silence.
 * Not here: other dates, depots and equipment that could fill the gap (services).
 * Read next: plan-fleet.ts.
 */
import type { FleetPlan } from '#lib/equipment/choices.ts';
import type { FleetProblem } from './fleet-problem.ts';
import { planFleet } from './plan-fleet.ts';

export interface Short {
  readonly item: string;
  readonly wanted: number;
  readonly free: number;
}

export interface Shortage {
  /** Valves more that could be served if nothing were short. */
  readonly valvesMore: number;
  /** What the plan would cost less, where it serves no more valves. */
  readonly saved_minor: number;
  readonly short: readonly Short[];
  /** Valves that no stock would help: nothing does them, or the hours do not reach. */
  readonly beyondStock: number;
}

export async function findShortage(request: {
  readonly problem: FleetProblem;
  readonly plan: FleetPlan;
}): Promise<Shortage> {
  const { problem, plan } = request;
  const enough = problem.crews * mostNeeded(problem);
  const items = problem.items.map((item) => ({ ...item, free: Math.max(item.free, enough) }));
  const unlimited = await planFleet({ ...problem, items });
  const carried = new Map<string, number>();
  for (const { item, count } of unlimited.kits.flatMap((kit) => kit.items)) {
    carried.set(item, (carried.get(item) ?? 0) + count);
  }
  const short = problem.items
    .map((item) => ({ item: item.id, wanted: carried.get(item.id) ?? 0, free: item.free }))
    .filter(({ wanted, free }) => wanted > free);
  const valvesMore = Math.max(0, unlimited.served - plan.served);
  return {
    valvesMore,
    saved_minor: valvesMore === 0 ? Math.max(0, plan.cost_minor - unlimited.cost_minor) : 0,
    short,
    beyondStock: plan.asked - Math.max(unlimited.served, plan.served),
  };
}

/** The most of any one item that one valve can need: counts of all roles of a family together. */
function mostNeeded(problem: FleetProblem): number {
  let most = 1;
  for (const family of problem.classes.flatMap((one) => one.families)) {
    const roles = [family.cores, ...family.slots];
    const needed = roles.reduce(
      (sum, role) => sum + Math.max(0, ...role.flatMap((option) => option.needs.map((need) => need.count))),
      0,
    );
    most = Math.max(most, needed);
  }
  return most;
}
