/*
 * An assembly: one complete chain for one line, power source to valve, with restraint, options, accessories and settings.
 * Invariant: every number on it can be worked out again from the line, the site and the models it names (lib/checking does).
 * Not here: searching for assemblies (kits) and sharing them out (fleet).
 * Read next: choices.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import type { Range } from '#lib/units/known-value.ts';
import type { Joules, Kilograms, NewtonMetres, Newtons, RevolutionsPerMinute, Seconds } from '#lib/units/quantity.ts';

/** Where to set the limiter, on its own scale (referred to where it sits). */
export interface LimiterSetting {
  readonly start: NewtonMetres;
  readonly step: NewtonMetres;
  readonly ceiling: NewtonMetres;
  /** The same three at the valve. */
  readonly atValve: { readonly start: NewtonMetres; readonly ceiling: NewtonMetres };
  /** False when the window is empty: it may not move at the torque allowed; to be agreed before hire. */
  readonly coversStarting: boolean;
}

export interface DirectionSettings {
  readonly unseat: LimiterSetting | null;
  readonly run: LimiterSetting | null;
  readonly seat: LimiterSetting | null;
  readonly strokeTime: Range<'s'>;
  readonly speed: RevolutionsPerMinute;
  /** What to select on the drive so that the wheel turns this way. */
  readonly select: 'clockwise' | 'anticlockwise' | 'try gently first: direction unknown';
}

export interface AssemblyParts {
  readonly drive: string;
  readonly gear: number;
  readonly head: string;
  readonly extensions: readonly string[];
  /** More than one where the line's range needs a covering set; the first is the likeliest. */
  readonly adapters: readonly string[];
  /**
   * Extensions before each adapter, by its place in `adapters`, where they do not all sit behind `extensions`; the first equals `extensions`.
   * The same key may stand twice, once with a shaft and once without.
   */
  readonly adapterExtensions?: readonly (readonly string[])[];
  readonly restraint: string;
  /** Torque limiter, turns counter; required ones always in. */
  readonly options: readonly string[];
  readonly accessories: readonly { readonly number: string; readonly count: number }[];
}

export interface AssemblyFigures {
  /** Highest torque the chain can put on the valve if nothing limits it. */
  readonly stallAtValve: NewtonMetres;
  /** Highest torque with the limiter at its ceiling and its error upward; equals stall without one. */
  readonly highestAtValve: NewtonMetres;
  /** Lowest torque the chain surely gives at the valve at rated torque. */
  readonly sureAtValve: NewtonMetres;
  readonly totalRatio: number;
  readonly limiterRequired: boolean;
  readonly counterRequired: boolean;
  readonly reactionForce: Newtons;
  readonly sideLoad: Newtons;
  readonly energyPerVisit: Joules;
  readonly setUpTime: Seconds;
  /** Set-up, strokes, accessories; moving and access not included. */
  readonly timePerValve: Seconds;
  readonly mass: Kilograms;
  readonly heaviestPiece: Kilograms;
  /** Chance that the line is done at the first visit, 0…1, from the ranges. */
  readonly chance: number;
}

export interface Assembly {
  /** Stable: made of the part numbers. */
  readonly id: string;
  readonly parts: AssemblyParts;
  readonly opening: DirectionSettings;
  readonly closing: DirectionSettings;
  readonly figures: AssemblyFigures;
  readonly findings: readonly Finding[];
  readonly steps: readonly Step[];
}
