/*
 * Rules about reach and room: extensions, swing of head and arm, headroom, weight held up, speed of long shafts.
 * Invariant: room that nobody gave is taken as free; what is given is a hard limit.
 * Not here: keys to buried nuts (buried.ts).
 * Read next: torque.ts.
 */

import type { ExtensionModel } from '#lib/equipment/model.ts';
import { metres, perMinute } from '#lib/units/quantity.ts';
import type { GripFacts, LineFacts, LinkFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, ranged, SAMPLE_NUT, said, sampleCore, stated } from './sample-facts.ts';
import { sampleDrive, sampleHead, sampleRestraint, sampleShaft, sampleWheelAdapter } from './sample-parts.ts';
import { sayLength, sayMass, sayPlain } from './say-number.ts';

const PRACTICE = 'common practice, no source';
/** Distance that a crew bridges without an extension; common practice, no source. */
export const ARMS_LENGTH_M = 0.7;
/** A coupling piece up to this length is no extension to an adapter; common practice, no source. */
export const COUPLING_PIECE_M = 0.12;
/** Drive and head above this want a sling when they hang from a wheel; common practice, no source. */
const HANGING_KG = 12;

function stack(facts: GripFacts): number {
  const lengths = facts.extensions.reduce((sum, extension) => sum + extension.facts.length.low, 0);
  return facts.core.head.facts.height + lengths + facts.adapter.facts.height;
}

/** Length that extensions add between head and adapter. */
export const extendedBy = (facts: { readonly extensions: readonly ExtensionModel[] }, end: 'low' | 'high'): number =>
  facts.extensions.reduce((sum, extension) => sum + extension.facts.length[end], 0);

const reachNeeded = ({ line }: LineFacts): number => (line.place.reach?.high ?? 0) - ARMS_LENGTH_M;

const gripOf = (change: Partial<GripFacts> = {}): GripFacts => ({
  ...lineFacts(),
  core: sampleCore(),
  extensions: [],
  adapter: sampleWheelAdapter(),
  ...change,
});

const linkOf = (change: Partial<LinkFacts> = {}): LinkFacts => ({
  ...lineFacts(),
  extensions: [],
  adapter: sampleWheelAdapter(),
  ...change,
});

export const REACH_RULES: readonly Rule[] = [
  {
    id: 'reach-long-enough',
    topic: 'reach and room',
    title: 'Extensions bridge what an arm does not reach',
    scope: 'link',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['reach', 'extension'],
    speaks: (facts) =>
      facts.duty.grip.depthToNut === undefined && extendedBy(facts, 'high') < reachNeeded(facts) - 1e-9,
    sentence: (facts) =>
      `${facts.line.tag} is ${sayLength(facts.line.place.reach?.high ?? 0)} away from where one can stand; extensions of ${sayLength(reachNeeded(facts))} are needed and these give ${sayLength(extendedBy(facts, 'high'))}.`,
    examples: () => {
      const far = lineFacts({ place: { reach: stated('m', 1.1) } });
      return [
        { name: 'far without extension', facts: linkOf(far), speaks: true },
        { name: 'far with extension', facts: linkOf({ ...far, extensions: [sampleShaft()] }), speaks: false },
        { name: 'near', facts: linkOf(), speaks: false },
      ];
    },
  },
  {
    id: 'adapter-takes-extension',
    topic: 'reach and room',
    title: 'Only some adapters are steady at the end of an extension',
    scope: 'link',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['adapter', 'extension'],
    speaks: (facts) => !facts.adapter.facts.takesExtension && extendedBy(facts, 'high') > COUPLING_PIECE_M,
    sentence: (facts) =>
      `${facts.adapter.name} ${facts.adapter.number} is not made to be driven through an extension (${facts.extensions.map((extension) => extension.number).join(', ')}, ${sayLength(extendedBy(facts, 'high'))}).`,
    examples: () => {
      const plate = sampleWheelAdapter({ facts: { takesExtension: false } });
      const piece = sampleShaft({ facts: { length: { low: metres(0.06), high: metres(0.06) } } });
      return [
        { name: 'plate on a shaft', facts: linkOf({ adapter: plate, extensions: [sampleShaft()] }), speaks: true },
        { name: 'plate on a coupling piece', facts: linkOf({ adapter: plate, extensions: [piece] }), speaks: false },
        { name: 'made for it', facts: linkOf({ extensions: [sampleShaft()] }), speaks: false },
      ];
    },
  },
  {
    id: 'head-has-room',
    topic: 'reach and room',
    title: 'Head and drive swing free',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['clear_radius', 'head'],
    speaks: ({ part, place }) => part.role === 'head' && part.facts.swingRadius > place.clearRadius_m,
    sentence: ({ part, place, line }) =>
      `${line.tag} leaves ${sayLength(place.clearRadius_m)} around it; ${part.name} ${part.number} swings ${sayLength(part.role === 'head' ? part.facts.swingRadius : 0)}.`,
    examples: () => [
      {
        name: 'tight',
        facts: { ...lineFacts({ place: { clearRadius: stated('m', 0.2) } }), part: sampleHead() },
        speaks: true,
      },
      { name: 'not given', facts: { ...lineFacts(), part: sampleHead() }, speaks: false },
    ],
  },
  {
    id: 'arm-has-room',
    topic: 'reach and room',
    title: 'The reaction arm has room at its shortest',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['clear_radius', 'restraint'],
    speaks: ({ part, place }) => part.role === 'restraint' && part.facts.arm.low > place.clearRadius_m,
    sentence: ({ part, place, line }) =>
      `${line.tag} leaves ${sayLength(place.clearRadius_m)} around it; ${part.name} ${part.number} needs ${sayLength(part.role === 'restraint' ? part.facts.arm.low : 0)}.`,
    examples: () => [
      {
        name: 'tight',
        facts: { ...lineFacts({ place: { clearRadius: stated('m', 0.3) } }), part: sampleRestraint() },
        speaks: true,
      },
      {
        name: 'enough',
        facts: { ...lineFacts({ place: { clearRadius: stated('m', 1) } }), part: sampleRestraint() },
        speaks: false,
      },
    ],
  },
  {
    id: 'headroom',
    topic: 'reach and room',
    title: 'Head, extensions and adapter fit under what is above',
    scope: 'grip',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['headroom', 'head', 'adapter', 'extension'],
    speaks: (facts) => facts.place.faces === 'up' && stack(facts) > facts.place.headroom_m,
    sentence: (facts) =>
      `${facts.line.tag} has ${sayLength(facts.place.headroom_m)} above it; ${facts.core.head.number} with ${facts.adapter.number} stands ${sayLength(stack(facts))} high.`,
    examples: () => [
      { name: 'low ceiling', facts: gripOf(lineFacts({ place: { headroom: stated('m', 0.25) } })), speaks: true },
      { name: 'enough', facts: gripOf(lineFacts({ place: { headroom: stated('m', 0.5) } })), speaks: false },
    ],
  },
  {
    id: 'adapter-holds-sideways',
    topic: 'reach and room',
    title: 'A wheel that faces sideways or down needs an adapter that holds on',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['faces', 'adapter'],
    speaks: ({ part, place }) => part.role === 'adapter' && place.faces !== 'up' && !part.facts.holdsSideways,
    sentence: ({ part, place, line }) =>
      `${line.tag} faces ${place.faces}; ${part.name} ${part.number} would come off.`,
    examples: () => {
      const loose = sampleWheelAdapter({ facts: { holdsSideways: false } });
      return [
        { name: 'sideways', facts: { ...lineFacts({ place: { faces: said('side') } }), part: loose }, speaks: true },
        { name: 'upwards', facts: { ...lineFacts(), part: loose }, speaks: false },
      ];
    },
  },
  {
    id: 'weight-held-up',
    topic: 'reach and room',
    title: 'The drive is held up where it would hang from the wheel',
    scope: 'core',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['faces', 'drive', 'head'],
    speaks: ({ place, core }) => place.faces !== 'up' && core.drive.mass + core.head.mass > HANGING_KG,
    sentence: ({ line, place, core }) =>
      `${line.tag} faces ${place.faces}: hang ${core.drive.number} with ${core.head.number} (${sayMass(core.drive.mass + core.head.mass)}) from a sling or balancer; the stem must not carry it.`,
    examples: () => {
      const heavy = sampleCore({ drive: sampleDrive({ mass_kg: 14 }) });
      return [
        { name: 'hanging', facts: { ...lineFacts({ place: { faces: said('side') } }), core: heavy }, speaks: true },
        { name: 'standing', facts: { ...lineFacts(), core: heavy }, speaks: false },
      ];
    },
  },
  {
    id: 'extension-speed',
    topic: 'reach and room',
    title: 'A long shaft is not run up to where it whips',
    scope: 'grip',
    severity: 'refusal',
    source: 'Whirling of shafts: engineering handbooks; the limit is the part’s own.',
    speaksOf: ['extension', 'drive'],
    speaks: (facts) =>
      facts.extensions.some(
        (extension) =>
          Math.max(facts.core.figures.opening.fastest, facts.core.figures.closing.fastest) > extension.facts.maxSpeed,
      ),
    sentence: (facts) =>
      `${facts.core.drive.number} would turn at ${sayPlain(Math.max(facts.core.figures.opening.fastest, facts.core.figures.closing.fastest))} 1/min, faster than ${facts.extensions.map((extension) => `${extension.number} allows (${sayPlain(extension.facts.maxSpeed)})`).join(' or ')}.`,
    examples: () => [
      {
        name: 'slow shaft',
        facts: gripOf({ extensions: [sampleShaft({ facts: { maxSpeed: perMinute(10) } })] }),
        speaks: true,
      },
      { name: 'fast enough', facts: gripOf({ extensions: [sampleShaft()] }), speaks: false },
    ],
  },
  {
    id: 'reach-not-sure',
    topic: 'reach and room',
    title: 'A reach that is only guessed is measured first',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['reach'],
    speaks: ({ line }) => line.place.reach?.basis === 'assumed' || line.place.reach?.basis === 'rule of thumb',
    sentence: ({ line }) =>
      `${line.tag}: the reach of up to ${sayLength(line.place.reach?.high ?? 0)} is a guess; measure it.`,
    examples: () => [
      { name: 'guessed', facts: lineFacts({ place: { reach: ranged('m', 0.5, 1.5) } }), speaks: true },
      { name: 'key in the street', facts: lineFacts({ duty: { grip: SAMPLE_NUT } }), speaks: false },
    ],
  },
];
