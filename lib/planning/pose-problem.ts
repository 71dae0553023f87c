/*
 * Puts what the fleet planner is asked: the classes with what serves them, models at their best rate with what is free, crews with their hours.
 * Invariant: every plan and every "what if" of the same input answers the same problem.
 * Not here: solving it (work-out.ts, leave-out-part.ts).
 * Read next: work-out.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { FleetItem, LineClass } from '#lib/equipment/choices.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import type { LineDuty } from '#lib/kits/find-choices.ts';
import { toMinor } from '#lib/money/money.ts';
import { bestRate } from '#lib/pricing/best-rate.ts';
import { minutes } from '#lib/units/quantity.ts';
import type { WorkOutInput } from './worked-out.ts';

export function pairDuties(lines: readonly ScheduleLine[], duties: readonly Duty[]): readonly LineDuty[] {
  return lines.flatMap((line, index) => {
    const duty = duties[index];
    return duty ? [{ line, duty }] : [];
  });
}

export function poseProblem(input: WorkOutInput, classes: readonly LineClass[]): Omit<FleetProblem, 'preference'> {
  return {
    classes,
    items: fleetItems(input),
    crews: input.site.crews,
    secondsPerCrew: minutes(input.site.shiftHours * 60 * input.site.days),
    labour_minor_per_hour: toMinor(input.labour_minor_per_hour),
    budget: input.budget,
  };
}

/** Every model that may be carried, at its best rate over the hire, with what is free on the dates. */
function fleetItems(input: WorkOutInput): readonly FleetItem[] {
  return input.models.map((model) => ({
    id: model.number,
    cost_minor: bestRate({ rates: model.rates, days: input.site.days }).total_minor,
    mass: model.mass,
    pieces: model.counted ? 0 : 1,
    free: model.madeToOrder ? input.site.crews : (input.free[model.number] ?? 0),
  }));
}
