/*
 * What leaving a model at the depot would cost: the plan solved again without it, beside the plan with it.
 * Invariant: both plans answer the same problem but for the one model; a difference never hides an unproven bound.
 * Not here: why an assembly needs the part (kits).
 * Read next: plan-fleet.ts.
 */
import type { FleetPlan } from '#lib/equipment/choices.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { FleetProblem } from './fleet-problem.ts';
import { planFleet } from './plan-fleet.ts';

export interface LeftOut {
  readonly item: string;
  /** Valves that could then not be served. */
  readonly valvesLost: number;
  /** What the rest would cost more (or less, where valves are lost). */
  readonly extraCost_minor: number;
  /** By the preference of the plan; comparable only where no valve is lost. */
  readonly extraObjective: number;
  /** Whether both plans are proven, so that the differences are exact. */
  readonly isExact: boolean;
  readonly plan: FleetPlan;
}

export async function leaveOut(request: {
  readonly problem: FleetProblem;
  readonly plan: FleetPlan;
  readonly item: string;
}): Promise<LeftOut> {
  const { problem, plan, item } = request;
  invariant(
    problem.items.some((one) => one.id === item),
    `The item ${item} is not part of the problem.`,
  );
  const items = problem.items.map((one) => (one.id === item ? { ...one, free: 0 } : one));
  const without = await planFleet({ ...problem, items });
  return {
    item,
    valvesLost: plan.served - without.served,
    extraCost_minor: without.cost_minor - plan.cost_minor,
    extraObjective: without.objective - plan.objective,
    isExact: plan.proof === 'proven' && without.proof === 'proven',
    plan: without,
  };
}
