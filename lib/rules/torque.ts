/*
 * Rules about torque along the chain: what the valve allows, what the drive reaches, what a limiter does.
 * Invariant: what must be reached is held against the lowest factor of the chain, what must not be passed against the highest.
 * Not here: what each part carries (part-ratings.ts), speed and running time (speed.ts), restraints (restraint.ts).
 * Read next: part-ratings.ts.
 */
import { DIRECTIONS, type Direction, type Duty } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import { type NewtonMetres, newtonMetres, ratio } from '#lib/units/quantity.ts';
import type { Core, CoreDirection } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, ranged, sampleCore, sampleCoreDirection, sampleDirection, stated } from './sample-facts.ts';
import { sampleLimiter } from './sample-parts.ts';
import { sayTorque } from './say-number.ts';

const DESIGN = 'Limiter window and chain factors: definitions; margins are common practice, no source';
const RATING = 'The part’s own rating';

const ways = (core: Core): readonly CoreDirection[] => [core.figures.opening, core.figures.closing];

/** The direction in which the chain falls shortest. */
function hardest(core: Core): CoreDirection {
  const { opening, closing } = core.figures;
  return closing.needed - closing.sure > opening.needed - opening.sure ? closing : opening;
}

const MARGIN = HOUSE_CONSTANTS.limiterMargin.nominal;

/** What the limiter at its ceiling surely lets through to the valve. */
function surely({ figures }: Core, way: Direction): number {
  const { limiter } = figures;
  return limiter === null ? 0 : (figures[way].ceiling ?? 0) * (1 - limiter.error) * limiter.factor.low;
}

/** The direction whose own window is open and in which this limiter cannot surely give what it needs with the margin. */
function shortWay(core: Core, duty: Duty): Direction | null {
  return (
    DIRECTIONS.find(
      (way) =>
        core.figures[way].ceiling !== null &&
        duty[way].limiter !== null &&
        surely(core, way) < duty[way].starting.high * MARGIN - 1e-9,
    ) ?? null
  );
}

/** The lower of two unlike ceilings. */
function lowerCeiling({ figures }: Core): NewtonMetres | null {
  const { opening, closing } = figures;
  if (opening.ceiling === null || closing.ceiling === null || opening.ceiling === closing.ceiling) return null;
  return newtonMetres(Math.min(opening.ceiling, closing.ceiling));
}

const LIMITER = {
  lowest: newtonMetres(10),
  highest: newtonMetres(120),
  error: ratio(0.1),
  overshoot: newtonMetres(2),
  step: newtonMetres(2),
  bothDirections: true,
  factor: { low: ratio(3.2), high: ratio(3.6) },
  number: 'SL-1',
};

const limited = (ceiling: number | null, sure: number): Core => {
  const way = sampleCoreDirection({
    ceiling: ceiling === null ? null : newtonMetres(ceiling),
    sure: newtonMetres(sure),
  });
  const figures = { limiterRequired: true, limiter: LIMITER, opening: way, closing: way };
  return sampleCore({ limiter: sampleLimiter(), figures });
};

export const TORQUE_RULES: readonly Rule[] = [
  {
    id: 'start-below-never-exceed',
    topic: 'torque',
    title: 'Even the lowest starting torque must be below what the valve must never see',
    scope: 'line',
    severity: 'refusal',
    source: DESIGN,
    speaksOf: ['starting_torque', 'max_torque'],
    speaks: ({ duty }) => [duty.opening, duty.closing].some((way) => way.starting.low > way.neverExceed.torque.high),
    sentence: ({ line, duty }) => {
      const way = duty.opening.starting.low > duty.opening.neverExceed.torque.high ? duty.opening : duty.closing;
      return `${line.tag} needs at least ${sayTorque(way.starting.low)} to move and must never see more than ${sayTorque(way.neverExceed.torque.high)} (${way.neverExceed.kind}): power would break it.`;
    },
    examples: () => {
      const weak = sampleDirection({
        neverExceed: { kind: 'stem torsion', directions: ['opening'], torque: stated('N·m', 120) },
      });
      return [
        { name: 'stem breaks first', facts: lineFacts({ duty: { opening: weak } }), speaks: true },
        { name: 'room between', facts: lineFacts(), speaks: false },
      ];
    },
  },
  {
    id: 'window-narrow',
    topic: 'torque',
    title: 'It may not move at the torque allowed',
    scope: 'line',
    severity: 'warning',
    source: DESIGN,
    speaksOf: ['starting_torque', 'max_torque'],
    speaks: ({ duty }) =>
      [duty.opening, duty.closing].some(
        (way) => way.limiter === null && way.starting.low <= way.neverExceed.torque.high,
      ),
    sentence: ({ line, duty }) => {
      const way = duty.opening.limiter === null ? duty.opening : duty.closing;
      return `${line.tag} may need ${sayTorque(way.starting.high)} to move and must never see more than ${sayTorque(way.neverExceed.torque.low)} (${way.neverExceed.kind}): it may not move at the torque allowed. Agree before hire what happens then.`;
    },
    examples: () => [
      {
        name: 'empty window',
        facts: lineFacts({ duty: { opening: sampleDirection({ limiter: null }) } }),
        speaks: true,
      },
      { name: 'open window', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'drive-reaches-torque',
    topic: 'torque',
    title: 'The chain surely gives the torque that the line asks for',
    scope: 'core',
    severity: 'refusal',
    source: DESIGN,
    speaksOf: ['starting_torque', 'drive', 'head'],
    speaks: ({ core }) => core.figures.limiter === null && ways(core).some((way) => way.sure < way.needed - 1e-9),
    sentence: ({ line, core }) =>
      `${line.tag} asks for ${sayTorque(hardest(core).needed)}; ${core.drive.number} in gear “${core.gear.name}” with ${core.head.number} surely gives ${sayTorque(hardest(core).sure)}.`,
    examples: () => [
      { name: 'strong enough', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
      {
        name: 'too weak',
        facts: {
          ...lineFacts(),
          core: sampleCore({ figures: { closing: sampleCoreDirection({ sure: newtonMetres(120) }) } }),
        },
        speaks: true,
      },
    ],
  },
  {
    id: 'drive-runs-at-torque',
    topic: 'torque',
    title: 'The drive may run at the running torque for as long as it takes',
    scope: 'core',
    severity: 'refusal',
    source: RATING,
    speaksOf: ['running_torque', 'drive', 'head'],
    speaks: ({ core, duty }) =>
      core.figures.sureAtValve < Math.max(duty.opening.running.nominal, duty.closing.running.nominal) - 1e-9,
    sentence: ({ line, core, duty }) =>
      `${line.tag} runs at about ${sayTorque(Math.max(duty.opening.running.nominal, duty.closing.running.nominal))}; ${core.drive.number} in gear “${core.gear.name}” with ${core.head.number} may run at ${sayTorque(core.figures.sureAtValve)}.`,
    examples: () => [
      { name: 'within rating', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
      {
        name: 'beyond rating',
        facts: { ...lineFacts(), core: sampleCore({ figures: { sureAtValve: newtonMetres(60) } }) },
        speaks: true,
      },
    ],
  },
  {
    id: 'drive-misses-high-end',
    topic: 'torque',
    title: 'The highest torque that the line may need is not covered',
    scope: 'core',
    severity: 'warning',
    source: DESIGN,
    speaksOf: ['starting_torque', 'drive', 'head'],
    speaks: ({ core, duty }) =>
      core.figures.opening.sure < duty.opening.starting.high || core.figures.closing.sure < duty.closing.starting.high,
    sentence: ({ line, core, duty }) =>
      `${line.tag} may need up to ${sayTorque(Math.max(duty.opening.starting.high, duty.closing.starting.high))}; this chain surely gives ${sayTorque(Math.min(core.figures.opening.sure, core.figures.closing.sure))}. Measuring the torque first tells whether that is enough.`,
    examples: () => [
      {
        name: 'wide range',
        facts: {
          ...lineFacts({ duty: { opening: sampleDirection({ starting: ranged('N·m', 100, 300) }) } }),
          core: sampleCore(),
        },
        speaks: true,
      },
      { name: 'covered', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
    ],
  },
  {
    id: 'limiter-required',
    topic: 'torque',
    title: 'A limiter where the drive could pass what the valve must never see, or that is only a guess',
    scope: 'core',
    severity: 'refusal',
    source: DESIGN,
    speaksOf: ['max_torque', 'drive', 'option'],
    speaks: ({ core }) => core.figures.limiterRequired && core.figures.limiter === null,
    sentence: ({ line, core }) =>
      `${line.tag} must never see more than ${sayTorque(core.figures.neverExceed)}, and ${core.drive.number} with ${core.head.number} stalls at up to ${sayTorque(core.figures.stallAtValve)}: a torque limiter is required.`,
    examples: () => [
      {
        name: 'none',
        facts: { ...lineFacts(), core: sampleCore({ figures: { limiterRequired: true } }) },
        speaks: true,
      },
      { name: 'not required', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
      { name: 'there', facts: { ...lineFacts(), core: limited(70, 200) }, speaks: false },
    ],
  },
  {
    id: 'limiter-low-enough',
    topic: 'torque',
    title: 'The limiter’s scale starts below what the valve must never see',
    scope: 'core',
    severity: 'refusal',
    source: DESIGN,
    speaksOf: ['max_torque', 'option'],
    speaks: ({ core }) =>
      core.figures.limiterRequired && core.figures.limiter !== null && ways(core).some((way) => way.ceiling === null),
    sentence: ({ line, core }) => {
      const limiter = core.figures.limiter;
      const lowest =
        limiter === null ? 0 : (limiter.lowest * (1 + limiter.error) + limiter.overshoot) * limiter.factor.high;
      return `${line.tag} must never see more than ${sayTorque(core.figures.neverExceed)}; the lowest setting of ${limiter?.number ?? 'the limiter'} may bring ${sayTorque(lowest)} to it.`;
    },
    examples: () => [
      { name: 'scale starts too high', facts: { ...lineFacts(), core: limited(null, 0) }, speaks: true },
      { name: 'fits', facts: { ...lineFacts(), core: limited(70, 200) }, speaks: false },
    ],
  },
  {
    id: 'limiter-reaches-torque',
    topic: 'torque',
    title: 'With the limiter at its ceiling the chain still gives what the line asks for',
    scope: 'core',
    severity: 'refusal',
    source: DESIGN,
    speaksOf: ['starting_torque', 'option', 'drive', 'head'],
    speaks: ({ core }) => core.figures.limiter !== null && ways(core).some((way) => way.sure < way.needed - 1e-9),
    sentence: ({ line, core }) =>
      `${line.tag} asks for ${sayTorque(hardest(core).needed)}; ${core.drive.number} with ${core.head.number} and limiter ${core.figures.limiter?.number ?? ''} surely gives ${sayTorque(hardest(core).sure)}.`,
    examples: () => [
      { name: 'reaches', facts: { ...lineFacts(), core: limited(70, 200) }, speaks: false },
      { name: 'trips first', facts: { ...lineFacts(), core: limited(40, 110) }, speaks: true },
    ],
  },
  {
    id: 'limiter-both-ways',
    topic: 'torque',
    title: 'A required limiter limits both directions',
    scope: 'core',
    severity: 'refusal',
    source: DESIGN,
    speaksOf: ['option', 'drive'],
    speaks: ({ core }) =>
      core.figures.limiterRequired && core.figures.limiter !== null && !core.figures.limiter.bothDirections,
    sentence: ({ line, core }) =>
      `${line.tag} needs a limit both ways; ${core.figures.limiter?.number ?? 'the limiter'} limits one way only.`,
    examples: () => {
      const oneWay = sampleCore({ figures: { limiterRequired: true, limiter: { ...LIMITER, bothDirections: false } } });
      return [
        { name: 'one way', facts: { ...lineFacts(), core: oneWay }, speaks: true },
        { name: 'both', facts: { ...lineFacts(), core: limited(70, 200) }, speaks: false },
      ];
    },
  },
  {
    id: 'limiter-window-narrow',
    topic: 'torque',
    title: 'With this limiter it may not move at the torque allowed',
    scope: 'core',
    severity: 'warning',
    source: DESIGN,
    speaksOf: ['starting_torque', 'max_torque', 'option'],
    speaks: ({ core, duty }) => shortWay(core, duty) !== null,
    sentence: ({ line, core, duty }) => {
      const way = shortWay(core, duty) ?? 'opening';
      return `${line.tag} may need ${sayTorque(duty[way].starting.high)} to move ${way === 'opening' ? 'open' : 'shut'}, with the margin ${sayTorque(duty[way].starting.high * MARGIN)}; at its ceiling ${core.figures.limiter?.number ?? 'the limiter'} surely lets ${sayTorque(surely(core, way))} through: it may not move at the torque allowed. Agree before hire what happens then.`;
    },
    examples: () => {
      const needing = (torque: number) =>
        lineFacts({
          duty: {
            opening: sampleDirection({ starting: stated('N·m', torque) }),
            closing: sampleDirection({ starting: stated('N·m', torque) }),
          },
        });
      // 70 · (1 − 0.1) · 3.2 = 202 N·m against the torque and a margin of a fifth or so on it.
      return [
        { name: 'short', facts: { ...needing(190), core: limited(70, 200) }, speaks: true },
        { name: 'enough', facts: { ...needing(100), core: limited(70, 200) }, speaks: false },
        { name: 'no limiter', facts: { ...needing(190), core: sampleCore() }, speaks: false },
      ];
    },
  },
  {
    id: 'direction-unknown-limit',
    topic: 'torque',
    title: 'While nobody knows which way it closes, the lower ceiling holds both ways',
    scope: 'core',
    severity: 'warning',
    source: DESIGN,
    speaksOf: ['closes', 'max_torque', 'option'],
    speaks: ({ core, duty }) => duty.closes === 'unknown' && lowerCeiling(core) !== null,
    sentence: ({ line, core }) =>
      `${line.tag}: until it has shown which way it closes, set ${core.figures.limiter?.number ?? 'the limiter'} no higher than ${sayTorque(lowerCeiling(core) ?? 0)} on its scale, whichever way it is turned.`,
    examples: () => {
      const unlike = sampleCore({
        limiter: sampleLimiter(),
        figures: {
          limiter: LIMITER,
          opening: sampleCoreDirection({ ceiling: newtonMetres(80) }),
          closing: sampleCoreDirection({ ceiling: newtonMetres(60) }),
        },
      });
      const unknown = lineFacts({ duty: { closes: 'unknown' } });
      return [
        { name: 'unlike ceilings', facts: { ...unknown, core: unlike }, speaks: true },
        { name: 'like ceilings', facts: { ...unknown, core: limited(70, 200) }, speaks: false },
        { name: 'known', facts: { ...lineFacts(), core: unlike }, speaks: false },
      ];
    },
  },
];
