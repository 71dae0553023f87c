/*
 * Why a model is in a plan, in figures: the plan of a list solved with it and without it, and the difference in valves, money, hours and kilograms.
 * Invariant: both plans are really solved; the answer says whether both are proven.
 * Not here: why the model fits a line or does not (../kits/why/explain-part.ts).
 * Read next: ../fleet/leave-out.ts.
 */
import { assessDuties } from '#lib/duty/assess-duties.ts';
import type { FleetPlan, ItemNeed, LineClass, Preference } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { leaveOut } from '#lib/fleet/leave-out.ts';
import { planFleet } from '#lib/fleet/plan-fleet.ts';
import { findChoices } from '#lib/kits/find-choices.ts';
import { pairDuties, poseProblem } from './pose-problem.ts';
import type { WorkOutInput } from './worked-out.ts';

export interface PartLeftOut {
  readonly part: string;
  /** How many of it the crews carry. */
  readonly carried: number;
  /** Lines whose valves are done with it, all or some. */
  readonly used_for: readonly string[];
  readonly valves_lost: number;
  readonly cost_minor: number;
  readonly extra_cost_minor: number;
  readonly extra_hours: number;
  readonly extra_mass_kg: number;
  /** What the crews would carry more of instead. */
  readonly instead: readonly ItemNeed[];
  readonly is_exact: boolean;
}

/** Undefined where the plan does not carry the part. */
export async function leaveOutPart(request: {
  readonly input: WorkOutInput;
  readonly preference: Preference;
  readonly part: string;
}): Promise<PartLeftOut | undefined> {
  const { input, preference, part } = request;
  const lineDuties = pairDuties(input.lines, assessDuties({ lines: input.lines, site: input.site }));
  const { classes } = findChoices({
    lines: lineDuties,
    site: input.site,
    models: input.models,
    constraints: input.constraints,
  });
  const problem = { ...poseProblem(input, classes), preference };
  const plan = await planFleet(problem);
  const before = carriedBy(plan);
  const carried = before.get(part) ?? 0;
  if (carried === 0) return undefined;
  const left = await leaveOut({ problem, plan, item: part });
  const after = carriedBy(left.plan);
  return {
    part,
    carried,
    used_for: usedFor({ plan, classes, part }),
    valves_lost: left.valvesLost,
    cost_minor: plan.cost_minor,
    extra_cost_minor: left.extraCost_minor,
    extra_hours: (timeOf(left.plan) - timeOf(plan)) / 3600,
    extra_mass_kg: massOf(after, input.models) - massOf(before, input.models),
    instead: [...after]
      .map(([item, count]) => ({ item, count: count - (before.get(item) ?? 0) }))
      .filter(({ count }) => count > 0)
      .sort((a, b) => (a.item < b.item ? -1 : 1)),
    is_exact: left.isExact,
  };
}

function carriedBy(plan: FleetPlan): ReadonlyMap<string, number> {
  const carried = new Map<string, number>();
  for (const { item, count } of plan.kits.flatMap((kit) => kit.items)) {
    carried.set(item, (carried.get(item) ?? 0) + count);
  }
  return carried;
}

function usedFor(request: {
  readonly plan: FleetPlan;
  readonly classes: readonly LineClass[];
  readonly part: string;
}): readonly string[] {
  const { plan, classes, part } = request;
  const tags = plan.work.flatMap((served) => {
    const lineClass = classes.find(({ id }) => id === served.classId);
    const family = lineClass?.families.find(({ id }) => id === served.family);
    if (!lineClass || !family) return [];
    const chosen = [
      ...family.cores.filter(({ id }) => id === served.core),
      ...family.slots.flatMap((slot, index) => slot.filter(({ id }) => id === served.slots[index])),
    ];
    return chosen.some(({ needs }) => needs.some(({ item }) => item === part)) ? lineClass.tags : [];
  });
  return [...new Set(tags)];
}

function timeOf(plan: FleetPlan): number {
  return plan.kits.reduce((sum, kit) => sum + kit.time, 0);
}

function massOf(carried: ReadonlyMap<string, number>, models: readonly Model[]): number {
  return models.reduce((sum, model) => sum + (carried.get(model.number) ?? 0) * model.mass, 0);
}
