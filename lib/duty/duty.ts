/*
 * The duty of a line: what its valve needs and what it must never see, with the basis of every number.
 * Invariant: never-exceed is the lowest of all bounds that are listed; opening and closing stand apart.
 * Not here: equipment, and what a drive can do about the duty.
 * Read next: assess-duty.ts, schedule-line.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import type { Known, Range } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

export const DIRECTIONS = ['opening', 'closing'] as const;
export type Direction = (typeof DIRECTIONS)[number];

/** One limit on the torque at the valve's input (wheel or nut). */
export interface TorqueBound {
  /** e.g. `stated`, `stem torsion`, `stem buckling`, `gearbox input`, `end stop`, `flange`, `wheel`, `spokes`, `nut`, `key`, `spindle`, `spindle pin`, `hand force`. */
  readonly kind: string;
  readonly directions: readonly Direction[];
  readonly torque: Known<'N·m'>;
}

export interface DirectionDuty {
  readonly starting: Known<'N·m'>;
  readonly running: Known<'N·m'>;
  /** The lowest known bound for this direction. */
  readonly neverExceed: TorqueBound;
  /** Ideal limiter (no error, no overshoot), at the valve's input; null when no setting satisfies both ends. */
  readonly limiter: Range<'N·m'> | null;
  readonly thrust: Known<'N'> | null;
}

export interface DutyThread {
  readonly meanDiameter: Known<'m'>;
  readonly lead: Known<'m'>;
  readonly selfLocking: 'yes' | 'no' | 'depends';
}

/** What the drive must grip and clear, with ranges where the list says nothing. */
export interface Grip {
  readonly kind: 'wheel' | 'nut' | 'none';
  /** Why there is nothing to grip, or what must happen first (actuator hand drive, chain wheel). */
  readonly remark?: string;
  readonly wheelDiameter?: Known<'m'>;
  readonly wheelSpokes?: { readonly low: number; readonly high: number };
  readonly wheelDish?: Known<'°'>;
  readonly nutShape?: string;
  /** Sizes across flats that the kit must cover; one when known. */
  readonly nutSizes?: readonly Known<'m'>[];
  /** Distance from the surface (or standing place) down to the nut. */
  readonly depthToNut?: Known<'m'>;
  /** How far the stem may stand through the wheel at any moment of the stroke; absent when it does not rise through. */
  readonly stemProtrusion?: Known<'m'>;
  readonly stemDiameter?: Known<'m'>;
  readonly wheelRises: 'yes' | 'no' | 'maybe';
  readonly stemRisesThroughWheel: 'yes' | 'no' | 'maybe';
  readonly travel?: Known<'m'>;
}

/** A range now, and as it would be. */
export interface Change<U extends Unit> {
  readonly before: Known<U>;
  readonly after: Known<U>;
}

/** What one measurement, if it reads as is likely, would do to the answer. */
export interface MeasureFirstEffect {
  /** What to measure or ask, as a sentence. */
  readonly what: string;
  /** With other kinds of valve `before` covers those too; `after` is the kind that is taken. */
  readonly tries: 'one measurement' | 'other kinds of valve';
  /** The direction of `start`: the worse one. */
  readonly direction: Direction;
  readonly start: Change<'N·m'>;
  /** What the valve must never see when opening. */
  readonly ceiling: Change<'N·m'>;
  readonly turns: Change<'turn'>;
}

export interface Duty {
  readonly tag: string;
  readonly qty: number;
  readonly strokes: number;
  readonly movement: 'screw' | 'geared' | 'keyed';
  readonly opening: DirectionDuty;
  readonly closing: DirectionDuty;
  readonly turns: Known<'turn'>;
  readonly bounds: readonly TorqueBound[];
  readonly thread: DutyThread | null;
  readonly closes: 'clockwise' | 'anticlockwise' | 'unknown';
  readonly minStrokeTime: Known<'s'> | null;
  readonly maxInputSpeed: Known<'1/min'>;
  readonly grip: Grip;
  /** True when counting turns is required (long stroke or an end stop that must not be hit under power). */
  readonly countTurns: boolean;
  /** The valve is said to be seized: it goes to the Desk and is not planned. */
  readonly seized: boolean;
  readonly findings: readonly Finding[];
  readonly steps: readonly Step[];
  /** The one measurement that would narrow the answer most. */
  readonly measureFirst: string | null;
  /** By how much it would, in numbers. */
  readonly measureFirstEffect: MeasureFirstEffect | null;
}
