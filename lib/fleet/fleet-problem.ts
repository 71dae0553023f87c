/*
 * What the fleet planner is asked: classes with their choices, pieces with cost and stock, crews with hours, and what to prefer.
 * Invariant: equal problems get equal plans unless the wall clock stopped one, and such a plan says so.
 * Not here: where classes come from (kits), what pieces cost (pricing), what is free (stock).
 * Read next: plan-fleet.ts.
 */
import type { FleetItem, LineClass, Preference } from '#lib/equipment/choices.ts';
import type { Minor } from '#lib/money/money.ts';
import type { Seconds } from '#lib/units/quantity.ts';

export interface FleetProblem {
  readonly classes: readonly LineClass[];
  readonly items: readonly FleetItem[];
  readonly crews: number;
  /** Working time of each crew over the window. */
  readonly secondsPerCrew: Seconds;
  /** What an hour of one crew is worth when plans are compared. */
  readonly labour_minor_per_hour: Minor;
  readonly preference: Preference;
  readonly budget: FleetBudget;
  readonly onProgress?: (progress: FleetProgress) => void;
  /** Asked now and then; true stops with the best plan so far, which is then marked halted. */
  readonly interrupt?: () => boolean;
  /** A clock in seconds from any start; without one only the solver's own running time counts against the budget. */
  readonly now?: () => number;
}

export interface FleetBudget {
  /** Wall clock of the solver; reaching it marks the plan halted. */
  readonly seconds: number;
  /** Branch-and-bound nodes over all stages. */
  readonly nodes: number;
}

export interface FleetProgress {
  readonly best: number;
  readonly bound: number;
}
