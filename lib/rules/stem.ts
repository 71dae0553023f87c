/*
 * Rules about the stem: what rises through the wheel must be cleared by head, options, extension and adapter.
 * Invariant: a stem that may rise is treated as one that does.
 * Not here: torque on the stem (duty).
 * Read next: wheel.ts, facts.ts.
 */
import { metres } from '#lib/units/quantity.ts';
import type { GripFacts, LineFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, ranged, said, sampleCore, sampleGrip, stated } from './sample-facts.ts';
import { sampleCounter, sampleHead, sampleShaft, sampleWheelAdapter } from './sample-parts.ts';
import { sayLength } from './say-number.ts';

const PRACTICE = 'common practice, no source';

const rises = ({ duty }: LineFacts): boolean => duty.grip.stemRisesThroughWheel !== 'no';
const stemDiameter = ({ duty }: LineFacts): number => duty.grip.stemDiameter?.high ?? 0;
const protrusion = ({ duty }: LineFacts): number => duty.grip.stemProtrusion?.high ?? duty.grip.travel?.high ?? 0;

function passes(bore: number | undefined, facts: LineFacts): boolean {
  return bore !== undefined && bore >= stemDiameter(facts);
}

function headClears(facts: GripFacts): boolean {
  const { kind, bore, boreDepth } = facts.core.head.facts;
  return kind === 'open-centre' && passes(bore, facts) && (boreDepth === undefined || boreDepth >= protrusion(facts));
}

/** A stem that ends inside a tubular extension never meets the head. */
function extensionSwallows(facts: GripFacts): boolean {
  const tubes = facts.extensions.filter((extension) => passes(extension.facts.bore, facts));
  return tubes.length > 0 && tubes.reduce((sum, tube) => sum + tube.facts.length.low, 0) >= protrusion(facts);
}

const RISING = sampleGrip({
  stemRisesThroughWheel: 'yes',
  stemDiameter: stated('m', 0.036),
  stemProtrusion: stated('m', 0.4),
});
const risingLine = (): LineFacts => lineFacts({ duty: { grip: RISING } });

export const STEM_RULES: readonly Rule[] = [
  {
    id: 'stem-bent',
    topic: 'stem',
    title: 'A bent stem is not turned under power',
    scope: 'line',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['notes'],
    speaks: ({ line }) => /bent (stem|spindle)|(stem|spindle) (is )?bent/i.test(line.notes ?? ''),
    sentence: ({ line }) =>
      `${line.tag}: the notes say that the stem is bent; a bent stem is not turned under power. Have it looked at first.`,
    examples: () => [
      { name: 'bent in the notes', facts: lineFacts({ line: { notes: 'Stem is bent, 2019' } }), speaks: true },
      { name: 'no such note', facts: lineFacts({ line: { notes: 'behind the shed' } }), speaks: false },
    ],
  },
  {
    id: 'stem-clears-head',
    topic: 'stem',
    title: 'A rising stem needs an open-centre head, or a tubular extension that holds all of it',
    scope: 'grip',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['stem', 'stem_diameter', 'stem_protrusion', 'head', 'extension'],
    speaks: (facts) => rises(facts) && !headClears(facts) && !extensionSwallows(facts),
    sentence: (facts) => {
      const { head } = facts.core;
      const bore = head.facts.bore === undefined ? 'no through bore' : `a bore of ${sayLength(head.facts.bore)}`;
      const depth = head.facts.boreDepth === undefined ? '' : ` and takes ${sayLength(head.facts.boreDepth)} of stem`;
      return `${facts.line.tag}: the stem (${sayLength(stemDiameter(facts))}) stands up to ${sayLength(protrusion(facts))} through the wheel; head ${head.number} is ${head.facts.kind} with ${bore}${depth}, and no tubular extension holds the stem.`;
    },
    examples: () => {
      const open = { ...risingLine(), extensions: [], adapter: sampleWheelAdapter() };
      const inline = sampleCore({ head: sampleHead({ facts: { kind: 'inline' } }) });
      const tube = sampleShaft({ facts: { bore: metres(0.05), length: { low: metres(0.5), high: metres(0.5) } } });
      const shallow = sampleCore({ head: sampleHead({ facts: { boreDepth: metres(0.2) } }) });
      return [
        { name: 'open centre', facts: { ...open, core: sampleCore() }, speaks: false },
        { name: 'inline head', facts: { ...open, core: inline }, speaks: true },
        { name: 'inline head over a tube', facts: { ...open, core: inline, extensions: [tube] }, speaks: false },
        { name: 'bore too shallow', facts: { ...open, core: shallow }, speaks: true },
      ];
    },
  },
  {
    id: 'stem-clears-adapter',
    topic: 'stem',
    title: 'A rising stem must pass the adapter',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['stem', 'stem_diameter', 'adapter'],
    speaks: (facts) => facts.part.role === 'adapter' && rises(facts) && !passes(facts.part.facts.bore, facts),
    sentence: (facts) =>
      `${facts.line.tag}: the stem (${sayLength(stemDiameter(facts))}) rises through the wheel and does not pass ${facts.part.name} ${facts.part.number}.`,
    examples: () => [
      { name: 'bore is wide enough', facts: { ...risingLine(), part: sampleWheelAdapter() }, speaks: false },
      {
        name: 'bore is too small',
        facts: { ...risingLine(), part: sampleWheelAdapter({ facts: { bore: metres(0.03) } }) },
        speaks: true,
      },
    ],
  },
  {
    id: 'stem-no-solid-shaft',
    topic: 'stem',
    title: 'No solid shaft where the stem must pass',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['stem', 'stem_diameter', 'extension'],
    speaks: (facts) => facts.part.role === 'extension' && rises(facts) && !passes(facts.part.facts.bore, facts),
    sentence: (facts) =>
      `${facts.line.tag}: the stem rises through the wheel, and ${facts.part.name} ${facts.part.number} leaves it no room.`,
    examples: () => [
      { name: 'solid shaft', facts: { ...risingLine(), part: sampleShaft() }, speaks: true },
      { name: 'tube', facts: { ...risingLine(), part: sampleShaft({ facts: { bore: metres(0.05) } }) }, speaks: false },
    ],
  },
  {
    id: 'stem-clears-options',
    topic: 'stem',
    title: 'A rising stem must pass what sits between head and adapter',
    scope: 'core',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['stem', 'stem_diameter', 'option'],
    speaks: (facts) =>
      rises(facts) &&
      [facts.core.limiter, facts.core.counter].some(
        (option) => option !== null && option.facts.sits === 'after head' && !passes(option.facts.bore, facts),
      ),
    sentence: (facts) =>
      `${facts.line.tag}: the stem rises through the wheel and does not pass the option that sits under the head.`,
    examples: () => [
      {
        name: 'counter under the head without a bore',
        facts: { ...risingLine(), core: sampleCore({ counter: sampleCounter({ facts: { sits: 'after head' } }) }) },
        speaks: true,
      },
      {
        name: 'clip-on counter',
        facts: { ...risingLine(), core: sampleCore({ counter: sampleCounter() }) },
        speaks: false,
      },
    ],
  },
  {
    id: 'stem-cover-off',
    topic: 'stem',
    title: 'A cover tube or indicator comes off first',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['stem_cover'],
    speaks: ({ line }) => line.interface.stemCover?.value === true,
    sentence: ({ line }) =>
      `${line.tag}: take the stem cover or indicator off before the head goes on, and put it back after.`,
    examples: () => [
      { name: 'with cover', facts: lineFacts({ line: { interface: { stemCover: said(true) } } }), speaks: true },
      { name: 'without', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'stem-protrusion-measured',
    topic: 'stem',
    title: 'Protrusion is asked with the position it was measured in',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['stem_protrusion', 'protrusion_measured_at'],
    speaks: (facts) =>
      rises(facts) &&
      (facts.duty.grip.stemProtrusion === undefined ||
        !['measured', 'stated', 'computed'].includes(facts.duty.grip.stemProtrusion.basis)),
    sentence: (facts) =>
      `${facts.line.tag}: how far the stem stands through the wheel is not known; up to ${sayLength(protrusion(facts))} is planned for. Measure it, and say whether the valve was open or closed.`,
    examples: () => [
      {
        name: 'assumed',
        facts: lineFacts({ duty: { grip: { ...RISING, stemProtrusion: ranged('m', 0.1, 0.4) } } }),
        speaks: true,
      },
      { name: 'stated', facts: risingLine(), speaks: false },
    ],
  },
  {
    id: 'stem-may-rise',
    topic: 'stem',
    title: 'A stem that may rise is planned as one that does',
    scope: 'line',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['stem'],
    speaks: ({ duty }) => duty.grip.stemRisesThroughWheel === 'maybe',
    sentence: ({ line }) =>
      `${line.tag}: nobody says whether the stem rises through the wheel; the equipment leaves room for it.`,
    examples: () => [
      {
        name: 'maybe',
        facts: lineFacts({ duty: { grip: { ...RISING, stemRisesThroughWheel: 'maybe' } } }),
        speaks: true,
      },
      { name: 'yes', facts: risingLine(), speaks: false },
    ],
  },
];
