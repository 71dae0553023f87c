/*
 * Rules about the ratings along the chain: head, extensions and adapter carry what the chain can bring.
 * Invariant: each rating is held against the highest torque, limiter at its ceiling with its error, or the stall.
 * Not here: restraints (restraint.ts).
 * Read next: speed.ts.
 */
import { newtonMetres } from '#lib/units/quantity.ts';
import type { CoreFacts, GripFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, sampleCore } from './sample-facts.ts';
import { sampleHead, sampleShaft, sampleWheelAdapter } from './sample-parts.ts';
import { sayTorque } from './say-number.ts';

const RATING = 'The part’s own rating';

const gripOf = (change: Partial<GripFacts>): GripFacts => ({
  ...lineFacts(),
  core: sampleCore(),
  extensions: [],
  adapter: sampleWheelAdapter(),
  ...change,
});

export const PART_RATING_RULES: readonly Rule[] = [
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
