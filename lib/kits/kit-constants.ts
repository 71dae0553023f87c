/*
 * The house's figures for choosing and timing equipment at a valve, each with its authority.
 * Invariant: a figure that kits uses and that comes from no line, model or table stands here.
 * Not here: margins of the duty (duty/house-constants.ts).
 * Read next: core-figures.ts.
 */
import {
  degrees,
  kilograms,
  metres,
  perMinute,
  type Ratio,
  ratio,
  type Seconds,
  seconds,
  turns,
} from '#lib/units/quantity.ts';

export const KIT_CONSTANTS = {
  /** Share of the stall torque that a drive surely gives for the moment of starting, store not full; common practice, no source. */
  startShare: ratio(0.85),
  /** Shock of a stall against a slack anchor; judgement, no source. */
  shock: ratio(2),
  /** A pull that is kept within 30° of square to the arm; common practice, no source. */
  pullAngle: degrees(60),
  /** Turns at both ends together that are done slowly or by hand; common practice, no source. */
  slowTurns: turns(4),
  slowSpeed: perMinute(12),
  /** Taking up slack and starting in steps; common practice, no source. */
  startTime: seconds(20),
  /** Powered turns of a stiff valve that is worked to and fro; common practice, no source. */
  toAndFro: ratio(1.5),
  /** Turns over which the torque falls from starting to running; common practice, no source. */
  startingTurns: turns(2),
  /** Putting drive and head together on the valve; common practice, no source. */
  mountTime: seconds(150),
  extensionTime: seconds(40),
  secondChainTime: seconds(60),
  /** Hose between the site's outlet and the tool, with its couplings; assumed where nothing is said. */
  hoseLength: metres(20),
  hoseCouplings: 4,
  /** Drive and head above this want a sling when they hang from a wheel; common practice, no source. */
  hangingMass: kilograms(12),
  /** Part of a pack's energy that is used before it is changed; common practice, no source. */
  packShare: ratio(0.8),
} as const;

/** Highest number of adapters in a set that covers a range. */
export const LARGEST_COVER = 3;
/** Covering sets kept for one core, cheapest in parts first. */
export const COVERS_KEPT = 60;

export const wholeSeconds = (value: number): Seconds => seconds(Math.round(value));
export const share = (value: number): Ratio => ratio(Math.min(1, Math.max(0, value)));
