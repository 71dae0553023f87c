/*
 * One planned day of a crew and what it asks of its people: hours, trigger time, hand-arm vibration, noise, lifts.
 * Invariant: screening figures from declared values; the days of a crew together hold its work in the plan, each valve once.
 * Not here: splitting work into days (planning), working the figures out again (checking).
 * Read next: ../planning/crew-days.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Kilograms, Seconds } from '#lib/units/quantity.ts';

/** What a crew does of one line on one day. */
export interface DayWork {
  readonly tag: string;
  readonly qty: number;
  /** Key into the plan's assemblies. */
  readonly assembly: string;
}

export interface DayVibration {
  /** A(8). */
  readonly exposure: Known<'m/s²'>;
  /** 100 at the action value, 400 at the limit value. */
  readonly points: number;
}

/** What the lifting equation says of the heaviest piece, lifted by one person from the ground to working height. */
export interface DayEquation {
  /** Valves of the day that it speaks of. */
  readonly valves: number;
  /** Of the worst of these; null where it speaks of none. */
  readonly worst: { readonly limit: Kilograms; readonly index: number } | null;
  /** Why it does not speak of the others. */
  readonly refused: readonly { readonly why: string; readonly valves: number }[];
}

export interface DayLifts {
  /** Pieces heavy enough to count, put on and taken off. */
  readonly count: number;
  readonly heaviest: Kilograms;
  /** Number of the heaviest piece. */
  readonly number: string;
  /** Masses up to which the screening filter asks no closer look, for anyone, close to the body, at the day's pace. */
  readonly filter: { readonly fromGround: Kilograms; readonly atWaist: Kilograms };
  readonly equation: DayEquation;
}

export interface CrewDay {
  /** As the plan counts crews. */
  readonly crew: number;
  /** 1 … */
  readonly day: number;
  /** In working order. */
  readonly work: readonly DayWork[];
  readonly valves: number;
  /** Moving, access, set-up, strokes, rests. */
  readonly time: Seconds;
  /** Powered strokes, to and fro and slow ends included; what one person has who holds the drive all day. */
  readonly trigger: Known<'s'>;
  /** One person holds the drive all day. */
  readonly alone: DayVibration;
  /** All persons of the crew hold it equally long; null where one works alone. */
  readonly turns: (DayVibration & { readonly persons: number }) | null;
  /** L_EX,8h in dB(A), without hearing protection, for everyone who stays near the drive. */
  readonly noise: Known<'dB'>;
  readonly lifts: DayLifts;
  readonly findings: readonly Finding[];
  readonly steps: readonly Step[];
}
