/*
 * What a plan with its kits and lines is checked against: lines, choices, site, models and what is free; and the figures that are checked.
 * Invariant: nothing here is worked out; a plan with its kits as the planning gives it out fits `OutcomeFigures`.
 * Not here: the checks (check-outcome.ts).
 * Read next: check-outcome.ts.
 */
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { FleetPlan, ItemNeed, LineClass, Preference, Served } from '#lib/equipment/choices.ts';
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import type { Model } from '#lib/equipment/model.ts';

export interface CarriedKit {
  readonly crew: number;
  readonly items: readonly ItemNeed[];
  readonly time_s: number;
  readonly mass_kg: number;
  readonly pieces: number;
  /** What the crew goes without because none is free. */
  readonly lacking?: readonly ItemNeed[];
}

export interface SharedLine {
  readonly tag: string;
  readonly classId: string;
  readonly asked: number;
  readonly served: number;
  readonly parts: readonly { readonly crew: number; readonly qty: number; readonly assembly: string }[];
}

export interface WorkPiece extends Served {
  readonly assembly: string;
}

export interface OutcomeFigures {
  readonly preference: Preference;
  readonly fleet: FleetPlan;
  readonly work: readonly WorkPiece[];
  readonly assemblies: Readonly<Record<string, Assembly>>;
  readonly kits: readonly CarriedKit[];
  readonly lines: readonly SharedLine[];
  readonly crewDays?: readonly CrewDay[];
}

export interface OutcomeFacts {
  readonly lines: readonly ScheduleLine[];
  readonly classes: readonly LineClass[];
  readonly site: Site;
  readonly models: readonly Model[];
  /** Pieces free over the whole window, by model number. */
  readonly free: Readonly<Record<string, number>>;
  readonly outcome: OutcomeFigures;
}
