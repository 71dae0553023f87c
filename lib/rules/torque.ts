/*
 * Rules about torque along the chain: what the valve allows, what the drive reaches, what each part carries, what a limiter does.
 * Invariant: what must be reached is held against the lowest factor of the chain, what must not be passed against the highest.
 * Not here: speed and running time (speed.ts), restraints (restraint.ts).
 * Read next: speed.ts.
 */
import { newtonMetres, ratio } from '#lib/units/quantity.ts';
import type { Core, CoreDirection, CoreFacts, GripFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, ranged, sampleCore, sampleCoreDirection, sampleDirection, stated } from './sample-facts.ts';
import { sampleHead, sampleLimiter, sampleShaft, sampleWheelAdapter } from './sample-parts.ts';
import { sayTorque } from './say-number.ts';

const DESIGN = 'Limiter window and chain factors: definitions; margins are common practice, no source';
const RATING = 'The part’s own rating';

const ways = (core: Core): readonly CoreDirection[] => [core.figures.opening, core.figures.closing];

/** The direction in which the chain falls shortest. */
function hardest(core: Core): CoreDirection {
  const { opening, closing } = core.figures;
  return closing.needed - closing.sure > opening.needed - opening.sure ? closing : opening;
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

const gripOf = (change: Partial<GripFacts>): GripFacts => ({
  ...lineFacts(),
  core: sampleCore(),
  extensions: [],
  adapter: sampleWheelAdapter(),
  ...change,
});

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
    id: 'head-carries-torque',
    topic: 'torque',
    title: 'The head carries the highest torque that the chain can bring',
    scope: 'core',
    severity: 'refusal',
    source: RATING,
    speaksOf: ['head', 'drive'],
    speaks: ({ core }) => core.figures.highestAtValve > core.head.facts.torqueRating + 1e-9,
    sentence: ({ core }) =>
      `Head ${core.head.number} carries ${sayTorque(core.head.facts.torqueRating)}; ${core.drive.number} can bring ${sayTorque(core.figures.highestAtValve)} to its output.`,
    examples: (): readonly { name: string; facts: CoreFacts; speaks: boolean }[] => [
      { name: 'carries', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
      {
        name: 'weak head',
        facts: {
          ...lineFacts(),
          core: sampleCore({ head: sampleHead({ facts: { torqueRating: newtonMetres(300) } }) }),
        },
        speaks: true,
      },
    ],
  },
  {
    id: 'adapter-carries-torque',
    topic: 'torque',
    title: 'The adapter carries the highest torque that the chain can bring',
    scope: 'grip',
    severity: 'refusal',
    source: RATING,
    speaksOf: ['adapter', 'drive', 'head'],
    speaks: ({ core, adapter }) => core.figures.highestAtValve > adapter.facts.torqueRating + 1e-9,
    sentence: ({ core, adapter }) =>
      `${adapter.name} ${adapter.number} carries ${sayTorque(adapter.facts.torqueRating)}; ${core.drive.number} with ${core.head.number} can bring ${sayTorque(core.figures.highestAtValve)}.`,
    examples: () => [
      { name: 'carries', facts: gripOf({}), speaks: false },
      {
        name: 'weak adapter',
        facts: gripOf({ adapter: sampleWheelAdapter({ facts: { torqueRating: newtonMetres(200) } }) }),
        speaks: true,
      },
    ],
  },
  {
    id: 'extension-carries-torque',
    topic: 'torque',
    title: 'Every extension carries the highest torque that the chain can bring',
    scope: 'grip',
    severity: 'refusal',
    source: RATING,
    speaksOf: ['extension', 'drive', 'head'],
    speaks: ({ core, extensions }) =>
      extensions.some((extension) => core.figures.highestAtValve > extension.facts.torqueRating + 1e-9),
    sentence: ({ core, extensions }) => {
      const weakest = extensions.toSorted((a, b) => a.facts.torqueRating - b.facts.torqueRating)[0];
      return `${weakest?.name ?? 'Extension'} ${weakest?.number ?? ''} carries ${sayTorque(weakest?.facts.torqueRating ?? 0)}; ${core.drive.number} with ${core.head.number} can bring ${sayTorque(core.figures.highestAtValve)}.`;
    },
    examples: () => [
      { name: 'carries', facts: gripOf({ extensions: [sampleShaft()] }), speaks: false },
      {
        name: 'weak shaft',
        facts: gripOf({ extensions: [sampleShaft({ facts: { torqueRating: newtonMetres(200) } })] }),
        speaks: true,
      },
    ],
  },
];
