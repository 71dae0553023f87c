/*
 * What a class of equal lines may be done with, factored so that it never needs a list of all assemblies, and the plan made of it.
 * Invariant: one core plus one alternative from every slot of the same family is a feasible assembly.
 * Not here: how choices are found (kits) and shared out (fleet).
 * Read next: assembly.ts.
 */
import type { Minor } from '#lib/money/money.ts';
import type { Kilograms, Seconds } from '#lib/units/quantity.ts';

/** A model, and how many of it a crew must carry to use the alternative. */
export interface ItemNeed {
  readonly item: string;
  readonly count: number;
}

export interface Alternative {
  /** Stable within its class; kits turns core + slots back into an assembly by these ids. */
  readonly id: string;
  readonly needs: readonly ItemNeed[];
  readonly timePerValve: Seconds;
  /** Spent per valve (consumables, or the supply cost of a published location problem). */
  readonly cost_minor: number;
  /** Factor of the chance to finish at the first visit; 1 when it does not matter. */
  readonly chance: number;
}

/** Cores that may be combined with every alternative of every slot. */
export interface ChoiceFamily {
  readonly id: string;
  readonly cores: readonly Alternative[];
  readonly slots: readonly (readonly Alternative[])[];
}

export interface LineClass {
  readonly id: string;
  /** Tags of the lines in it. */
  readonly tags: readonly string[];
  /** Valves in it: sum of the lines' quantities. */
  readonly qty: number;
  /** Moving and access per valve. */
  readonly moveTime: Seconds;
  readonly families: readonly ChoiceFamily[];
}

/** What one piece of a model costs over the window, and what is free. */
export interface FleetItem {
  readonly id: string;
  readonly cost_minor: Minor;
  readonly mass: Kilograms;
  /** Pieces that count in "fewest pieces"; 0 for pins and the like. */
  readonly pieces: number;
  readonly free: number;
}

export interface Served {
  readonly classId: string;
  readonly crew: number;
  readonly qty: number;
  readonly family: string;
  readonly core: string;
  readonly slots: readonly string[];
}

export interface CrewKit {
  readonly crew: number;
  readonly items: readonly ItemNeed[];
  readonly time: Seconds;
}

export type Preference = 'cost' | 'pieces' | 'time' | 'surest';

export interface FleetPlan {
  readonly preference: Preference;
  readonly served: number;
  readonly asked: number;
  /** No plan serves more valves than this; above `served` only where that stage was not closed. */
  readonly servedAtMost?: number;
  readonly kits: readonly CrewKit[];
  readonly work: readonly Served[];
  readonly cost_minor: number;
  readonly objective: number;
  readonly bound: number;
  /** (objective − bound) / max(1, |objective|). */
  readonly gap: number;
  /** No plan as good by the preference costs less; given where cost only breaks ties. */
  readonly costAtLeast_minor?: number;
  readonly proof: 'proven' | 'proven by an unchecked solver call' | 'bounded' | 'halted';
  readonly effort: Readonly<Record<string, number>>;
}
