/*
 * The planner's own form of a problem: numbers by index, families split so that each has one chance and no piece in two roles.
 * Invariant: within a branch, one option from every role is an assembly; an item occurs in the options of one role only.
 * Not here: how a problem is turned into it (prepare.ts) and what is solved on it (build-model.ts, search-plan.ts).
 * Read next: prepare.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';

export interface Need {
  readonly item: number;
  readonly count: number;
}

export interface Option {
  /** Id of the alternative that it stands for. */
  readonly id: string;
  readonly needs: readonly Need[];
  readonly cost_minor: number;
  readonly time: number;
}

/** What may fill one place of an assembly: one option of it is taken. */
export type Role = readonly Option[];

/** A family, or the part of one in which the chance is the same for every combination. */
export interface Branch {
  readonly family: string;
  /** Role 0 holds the cores, the others the slots in their order. */
  readonly roles: readonly Role[];
  readonly chance: number;
}

export interface Job {
  readonly id: string;
  readonly qty: number;
  readonly moveTime: number;
  readonly branches: readonly Branch[];
}

export interface ProgramItem {
  readonly id: string;
  readonly cost_minor: number;
  readonly pieces: number;
  readonly free: number;
}

export interface Program {
  readonly jobs: readonly Job[];
  readonly items: readonly ProgramItem[];
  readonly crews: number;
  readonly secondsPerCrew: number;
  readonly labour_minor_per_second: number;
}

/** Some valves of a job done by one crew in one way. */
export interface Use {
  readonly job: number;
  readonly crew: number;
  readonly branch: number;
  /** Index of the option in every role. */
  readonly options: readonly number[];
  readonly qty: number;
}

/** What a plan is measured by; every aim is minimised. */
export type Aim = 'unserved' | 'cost' | 'pieces' | 'time' | 'second visits';

export type Measures = Readonly<Record<Aim, number>>;

export interface Solution {
  readonly uses: readonly Use[];
  /** Pieces carried, by crew and item: exactly what the uses need. */
  readonly kits: readonly (readonly number[])[];
  readonly times: readonly number[];
  readonly measures: Measures;
}

/** The element at an index that is known to exist. */
export function pick<Value>(values: readonly Value[], index: number): Value {
  const value = values[index];
  invariant(value !== undefined, `Index ${index} is outside a list of ${values.length}.`);
  return value;
}

export function optionsOf(program: Program, use: Use): readonly Option[] {
  const branch = pick(pick(program.jobs, use.job).branches, use.branch);
  return use.options.map((option, role) => pick(pick(branch.roles, role), option));
}
