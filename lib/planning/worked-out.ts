/*
 * What goes into working out an enquiry and what comes out, as plain data that crosses threads and is stored with quotes.
 * Invariant: everything survives JSON.
 * Not here: the working (work-out.ts).
 * Read next: work-out.ts.
 */
import type { PlanConstraints } from '#lib/contracts/constraints.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { FleetPlan, ItemNeed, Preference, Served } from '#lib/equipment/choices.ts';
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Shortage } from '#lib/fleet/find-shortage.ts';
import type { Unserved } from '#lib/kits/find-choices.ts';

export interface WorkOutInput {
  readonly lines: readonly ScheduleLine[];
  readonly site: Site;
  readonly models: readonly Model[];
  /** Pieces free over the whole window, by model number. */
  readonly free: Readonly<Record<string, number>>;
  /** What an hour of a crew costs when plans are compared; priced only for operated hire. */
  readonly labour_minor_per_hour: number;
  readonly preferences: readonly Preference[];
  readonly constraints: PlanConstraints;
  readonly budget: { readonly seconds: number; readonly nodes: number };
}

/** The best plan so far and the bound that none can beat, in the unit of the preference: money, pieces, seconds, second visits. */
export interface PlanProgress {
  readonly preference: Preference;
  readonly best: number;
  readonly bound: number;
}

export interface PlannedWork extends Served {
  /** Key into `assemblies`. */
  readonly assembly: string;
}

export interface PlannedLine {
  readonly tag: string;
  readonly classId: string;
  readonly asked: number;
  readonly served: number;
  readonly parts: readonly { readonly crew: number; readonly qty: number; readonly assembly: string }[];
}

export interface PlannedKit {
  readonly crew: number;
  readonly items: readonly ItemNeed[];
  readonly time_s: number;
  readonly mass_kg: number;
  readonly pieces: number;
  /** What it should have besides and goes without, because none is free; absent where nothing lacks. */
  readonly lacking?: readonly ItemNeed[];
}

export interface PlanOutcome {
  readonly preference: Preference;
  readonly fleet: FleetPlan;
  readonly kits: readonly PlannedKit[];
  readonly work: readonly PlannedWork[];
  readonly assemblies: Readonly<Record<string, Assembly>>;
  readonly lines: readonly PlannedLine[];
  /** Crew by crew and day by day; absent in plans that were kept before days were planned. */
  readonly crewDays?: readonly CrewDay[];
  /** What the independent check found; a plan with any is never shown as a plan. */
  readonly discrepancies: readonly string[];
}

export interface WorkedOut {
  readonly duties: readonly Duty[];
  readonly classes: readonly { readonly id: string; readonly tags: readonly string[]; readonly qty: number }[];
  readonly plans: readonly PlanOutcome[];
  readonly unserved: readonly Unserved[];
  /** What stock would have to be there to serve more; null where the first plan serves all that equipment fits. */
  readonly shortage: Shortage | null;
  readonly effort: Readonly<Record<string, number>>;
  /** Milliseconds by stage. */
  readonly timings: Readonly<Record<string, number>>;
}
