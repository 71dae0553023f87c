/*
 * The house's own figures behind a duty, each with its basis: margins, factors and defaults.
 * Invariant: a figure that is used anywhere in lib/duty without coming from the line or a table stands here.
 * Not here: tables by size and type (lib/engineering).
 * Read next: valve-defaults.ts.
 */
import { type Known, known, type Origin } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

const common = (what: string): Origin => ({ basis: 'rule of thumb', source: `${what}; common practice, no source.` });

function constant<U extends Unit>(unit: U, low: number, nominal: number, high: number, origin: Origin): Known<U> {
  return known(unit, { low, nominal, high }, origin);
}

export const HOUSE_CONSTANTS = {
  /** Limiter window: how far its lower end lies above the highest starting torque. */
  limiterMargin: constant('1', 1.25, 1.25, 1.25, common('Margin of the limiter above the starting torque')),
  /** A safety factor on yielding where a stem's strength bounds the torque. */
  strengthFactor: constant('1', 1.5, 1.5, 1.5, common('Factor against yielding of stems and spindles')),
  /** A safety factor on bowing of a stem in compression. */
  bucklingFactor: constant('1', 2, 2, 2, common('Factor against bowing of stems')),
  bucklingEnds: constant(
    '1',
    0.6,
    0.75,
    0.95,
    common('Effective-length factor of a stem held in its nut and guided at its end'),
  ),
  threadFriction: constant('1', 0.1, 0.15, 0.2, {
    basis: 'rule of thumb',
    source:
      'Friction of stem and nut 0.15, 0.20 on the safe side (industry gate-valve torque guide, secondary); 0.10 when freshly greased, common practice.',
  }),
  collarFriction: constant('1', 0.1, 0.15, 0.2, common('Friction of a plain shoulder')),
  rollingCollarFriction: constant(
    '1',
    0.003,
    0.006,
    0.012,
    common('Friction of a rolling thrust bearing at its mean diameter'),
  ),
  swivelFriction: constant('1', 0.1, 0.15, 0.25, common('Friction of the pivot between stem and disc')),
  /** Mean diameter of what rubs, as a share of the stem's diameter. */
  collarShare: constant('1', 1.3, 1.45, 1.6, common('Mean diameter of a thrust shoulder against the stem')),
  swivelShare: constant(
    '1',
    0.25,
    0.4,
    0.6,
    common('Mean diameter of the pivot between stem and disc against the stem'),
  ),
  lostMotion: constant('turn', 0, 0.5, 1.5, common('Turns before anything moves')),
  yieldOfUnknownStem: constant(
    'Pa',
    200e6,
    275e6,
    450e6,
    common('Yield stress of stems of unknown material, bronze to steel'),
  ),
  yieldOfSteelStem: constant('Pa', 275e6, 400e6, 550e6, common('Yield stress of steel and 13 % chromium stems')),
  yieldOfBronzeStem: constant('Pa', 120e6, 170e6, 250e6, common('Yield stress of bronze and brass stems')),
  yieldOfSpindle: constant('Pa', 200e6, 235e6, 275e6, common('Yield stress of extension spindles of plain steel')),
  /** Diameter of the pin that holds an extension spindle, as a share of the spindle. */
  pinShare: constant('1', 0.25, 0.33, 0.4, common('Pin of an extension spindle against its spindle')),
  /** Old, corroded or stiff: weaker than any table. */
  oldStrength: constant('1', 0.6, 0.8, 1, common('Strength that age and corrosion leave')),
  soundStrength: constant('1', 1, 1, 1, common('Strength of a sound part')),
  /** A sound valve that is said to be moved with a torque bears so much of it. */
  borneMargin: constant('1', 1.5, 1.5, 1.5, common('What a sound valve bears against the torque that moves it')),
  yearsUntilOld: constant('1', 30, 30, 30, common('Years from which a valve counts as old')),
  /** Two hands on the bar of a key, each at half its length. */
  keyBarRadius: constant('m', 0.3, 0.4, 0.5, common('Half of the bar of a valve key')),
  handForce: constant('N', 360, 520, 670, {
    basis: 'standard',
    source: 'Between 360 N (80 lbf, API Spec 6D) and 670 N (150 lbf, MSS SP-91) in total at the rim.',
  }),
  /** More than this many times the design pull of a person gets a question. */
  handForceQuestion: constant('1', 2.5, 2.5, 2.5, common('Times a person’s force from which the numbers are doubted')),
  /** Speed at wheel or nut with flow or unknown flow, and without. */
  speedWithFlow: constant('1/min', 30, 30, 30, common('Speed at the wheel or nut while water may flow')),
  speedWithoutFlow: constant('1/min', 60, 60, 60, common('Speed at the wheel or nut in still water')),
  /** With flow: at least so long, and so long for each metre of nominal size. */
  strokeWithFlow: {
    least: constant('s', 15, 15, 15, common('Shortest stroke while water may flow')),
    perMetre: constant(
      's',
      200,
      200,
      200,
      common('Shortest stroke while water may flow, 200 s for each m of size and 15 s at least'),
    ),
  },
  gearboxInputSpeed: constant('1/min', 60, 60, 60, common('Speed at the input of a valve’s gearbox')),
  /** Share of the stroke at the closed end that does most of the closing. */
  effectiveShare: {
    gate: constant('1', 0.1, 0.15, 0.25, common('Last part of a gate’s stroke that does most of the closing')),
    other: constant('1', 0.2, 0.3, 0.5, common('Last part of the stroke that does most of the closing')),
  },
  waveSpeed: constant('m/s', 400, 1000, 1250, common('Speed of a pressure wave, plastic to steel pipe')),
  flowVelocity: constant('m/s', 0.5, 1.2, 2, common('Velocity in a water main')),
  /** Rise of pressure that a closure should stay below, as a share of the rated pressure. */
  surgeShare: constant('1', 0.2, 0.2, 0.2, common('Surge allowed as a share of the rated pressure')),
  turnsThatNeedCounting: constant('turn', 15, 15, 15, common('Turns from which a counter is required')),
  /** What a torque read off a valve may have grown by for each further year at rest. */
  torqueGrowth: constant('1', 0, 0.05, 0.1, common('Growth of a valve’s torque for each year after the first')),
  /** What starting took, as a share of the highest torque of the stroke, which may have been met on seating instead. */
  startOfHighest: constant('1', 0.6, 1, 1, common('Starting torque against the highest torque of the same stroke')),
  /** Stated and computed values that differ by more than this are shown with a finding. */
  disagreement: constant('1', 1.25, 1.25, 1.25, common('Ratio from which two values disagree')),
} as const;
