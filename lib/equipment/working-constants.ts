/*
 * The house's figures for working equipment at a valve, each with its authority; what is built with them is checked with them.
 * Invariant: a figure of an assembly that comes from no line, model or table stands here.
 * Not here: margins of the duty (duty/house-constants.ts) and sizes of the search (kits/kit-constants.ts).
 * Read next: assembly.ts.
 */
import { degrees, kilograms, metres, perMinute, ratio, seconds, turns } from '#lib/units/quantity.ts';

export const WORKING_CONSTANTS = {
  /** Share of the stall torque that a drive surely gives for the moment of starting, store not full; common practice, no source. */
  startShare: ratio(0.85),
  /** Shock of a stall against a slack anchor; judgement, no source. */
  shock: ratio(2),
  /** A pull that is kept within 30° of square to the arm; common practice, no source. */
  pullAngle: degrees(60),
  /** Steeper than any universal joint works; keeps ripple finite for chains that are refused. */
  steepestJoint: degrees(60),
  /** Lowest friction of a rubber-faced plate on firm, damp ground; judgement, no source. */
  plateFriction: ratio(0.4),
  /** Turns at both ends together that are done slowly or by hand; common practice, no source. */
  slowTurns: turns(4),
  slowSpeed: perMinute(12),
  /** Speed below which a stroke is not worth counting; keeps times finite for chains that are refused. */
  crawl: perMinute(0.2),
  /** Taking up slack and starting in steps; common practice, no source. */
  startTime: seconds(20),
  /** Powered turns of a stiff valve that is worked to and fro; common practice, no source. */
  toAndFro: ratio(1.5),
  /** Years without a stroke after which a valve is taken to be stiff; common practice, no source. */
  stiffAfterYears: 5,
  /** Turns over which the torque falls from starting to running; common practice, no source. */
  startingTurns: turns(2),
  /** Putting drive and head together on the valve; common practice, no source. */
  mountTime: seconds(150),
  extensionTime: seconds(40),
  secondChainTime: seconds(60),
  /** Distance from the site's outlet to the tool that the hoses of a kit reach; assumed where nothing is said. */
  hoseReach: metres(20),
  /** Hose that the air then runs through, as whole hoses make up that reach, with its couplings. */
  hoseLength: metres(30),
  hoseCouplings: 4,
  /** What is left to an air motor below the pressures that the table of motors covers; judgement, no source. */
  starvedAir: { torque: ratio(0.3), speed: ratio(0.5) },
  /** Drive and head above this want a sling when they hang from a wheel; common practice, no source. */
  hangingMass: kilograms(12),
  /** Wheels of unknown diameter; common practice, no source. */
  anyWheel: { low: metres(0.15), high: metres(0.9) },
  /** Shapes that a nut or square of unknown shape is taken to have; common practice, no source. */
  usualNutShapes: ['tapered square', 'square'],
  /** A piece as it is lifted: hands before the ankles, from the ground by its handles, up to a valve at working height; assumed. */
  lift: { reach: metres(0.4), from: metres(0.2), to: metres(1) },
  /** Pieces above this count as lifts: the lowest mass of the screening filter, HSE L23. */
  countedLift: kilograms(3),
  /** What one person lifts at most, and so what two share: HSE L23 filter at waist height, men's column. */
  onePersonLift: kilograms(25),
  /** Further than this a piece is carried, not lifted; judgement, no source. */
  carried: metres(2),
  /** Less height than this is no place to stand upright; judgement, no source. */
  standing: metres(1.9),
  /** Part of a pack's energy that is used before it is changed; common practice, no source. */
  packShare: ratio(0.8),
} as const;
