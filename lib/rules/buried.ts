/*
 * Rules about buried valves: key long enough and not too long, guided, straight or with a joint, and the surface box.
 * Invariant: length is judged for each depth that the range holds.
 * Not here: sockets (no-wheel.ts) and street stands' anchors (restraint.ts).
 * Read next: reach.ts.
 */
import { jointPairRatioAt, throughJoint } from '#lib/engineering/universal-joint.ts';
import type { ExtensionModel } from '#lib/equipment/model.ts';
import { degrees, metres, ratio } from '#lib/units/quantity.ts';
import type { CaseFacts, LinkFacts } from './facts.ts';
import { extendedBy } from './reach.ts';
import type { Rule } from './rule.ts';
import { lineFacts, ranged, SAMPLE_NUT, said, sampleCore, stated } from './sample-facts.ts';
import { sampleJoint, sampleKey, sampleRestraint, sampleShaft } from './sample-parts.ts';
import { sayLength, sayPlain } from './say-number.ts';
import { jointAngle, STRAIGHT_UP_TO_DEG } from './ways-of-working.ts';

const PRACTICE = 'common practice, no source';
/** A head stands at least this far above the surface to be fitted, and at most so far to be watched and held; common practice, no source. */
export const WORKING_HEIGHT_M = { low: 0.1, high: 1.3 } as const;
/** Up to this depth a nut counts as within reach; common practice, no source. */
export const SHALLOW_M = 0.3;
/** A key longer than this whips and bends without a guide; common practice, no source. */
export const GUIDED_FROM_M = 2;

/** Reach of adapter and extensions together, head output to nut. */
function chainLength(facts: CaseFacts): { readonly low: number; readonly high: number } {
  const { length, height } = facts.adapter.facts;
  return {
    low: extendedBy(facts, 'low') + (length?.low ?? height),
    high: extendedBy(facts, 'high') + (length?.high ?? height),
  };
}

const pairOf = ({ extensions }: LinkFacts): ExtensionModel | undefined =>
  extensions.find(({ facts }) => facts.joints === 2);

const isDeep = (facts: CaseFacts): boolean => facts.gripCase.kind === 'nut' && facts.gripCase.depth_m > SHALLOW_M;

const atDepth = (depth_m: number, key = sampleKey()): CaseFacts => ({
  ...lineFacts({ duty: { grip: SAMPLE_NUT, movement: 'keyed' } }),
  adapter: key,
  extensions: [],
  gripCase: { kind: 'nut', shape: 'square', acrossFlats_m: 0.029, depth_m },
});

const misaligned = (angle: number) =>
  lineFacts({ duty: { grip: SAMPLE_NUT }, place: { misalignment: stated('°', angle) } });

export const BURIED_RULES: readonly Rule[] = [
  {
    id: 'key-long-enough',
    topic: 'buried',
    title: 'Key and extensions reach from the nut to working height',
    scope: 'case',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['depth_to_nut', 'adapter', 'extension'],
    speaks: (facts) =>
      facts.gripCase.kind === 'nut' &&
      isDeep(facts) &&
      chainLength(facts).high < facts.gripCase.depth_m + WORKING_HEIGHT_M.low,
    sentence: (facts) => {
      const depth = facts.gripCase.kind === 'nut' ? facts.gripCase.depth_m : 0;
      return `${facts.line.tag}: the nut lies ${sayLength(depth)} deep; ${facts.adapter.name} ${facts.adapter.number} with its extensions reaches ${sayLength(chainLength(facts).high)}, and ${sayLength(depth + WORKING_HEIGHT_M.low)} is needed.`;
    },
    examples: () => [
      { name: 'reaches', facts: atDepth(1.2), speaks: false },
      { name: 'too deep', facts: atDepth(2.6), speaks: true },
      {
        name: 'too deep, with a shaft',
        facts: {
          ...atDepth(2.6),
          extensions: [sampleShaft({ facts: { length: { low: metres(0.6), high: metres(0.6) } } })],
        },
        speaks: false,
      },
      {
        name: 'socket on a nut in the open',
        facts: atDepth(0, sampleKey({ facts: { kind: 'drive socket' } })),
        speaks: false,
      },
    ],
  },
  {
    id: 'key-not-too-long',
    topic: 'buried',
    title: 'The head does not stand higher than a person can watch',
    scope: 'case',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['depth_to_nut', 'adapter', 'extension'],
    speaks: (facts) =>
      facts.gripCase.kind === 'nut' && chainLength(facts).low > facts.gripCase.depth_m + WORKING_HEIGHT_M.high,
    sentence: (facts) => {
      const depth = facts.gripCase.kind === 'nut' ? facts.gripCase.depth_m : 0;
      return `${facts.line.tag}: the nut lies ${sayLength(depth)} deep; ${facts.adapter.name} ${facts.adapter.number} is ${sayLength(chainLength(facts).low)} at its shortest and would hold the head ${sayLength(chainLength(facts).low - depth)} above the surface.`;
    },
    examples: () => [
      { name: 'short enough', facts: atDepth(1.2), speaks: false },
      {
        name: 'long key on a shallow nut',
        facts: atDepth(0.2, sampleKey({ facts: { length: { low: metres(1.9), high: metres(3) } } })),
        speaks: true,
      },
    ],
  },
  {
    id: 'key-guided-when-long',
    topic: 'buried',
    title: 'A long key is guided in the surface box',
    scope: 'whole',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['depth_to_nut', 'adapter'],
    speaks: ({ duty, links }) =>
      links.some(({ adapter }) => adapter.facts.kind === 'valve key') &&
      (duty.grip.depthToNut?.high ?? 0) + WORKING_HEIGHT_M.low > GUIDED_FROM_M,
    sentence: ({ line, duty }) =>
      `${line.tag}: the key is over ${sayLength(GUIDED_FROM_M)} long (nut ${sayLength(duty.grip.depthToNut?.high ?? 0)} deep): guide it in the surface box, turn slowly, and stand clear of the key, which stores wind-up.`,
    examples: () => {
      const facts = (depth: number) => ({
        ...lineFacts({ duty: { grip: { ...SAMPLE_NUT, depthToNut: stated('m', depth) } } }),
        core: sampleCore(),
        links: [{ adapter: sampleKey(), extensions: [] }],
        restraint: sampleRestraint(),
        secondChain: null,
        reaction: {
          arm_m: 0.8,
          force: sampleRestraint().facts.forceRating,
          sideLoad: sampleRestraint().facts.forceRating,
        },
      });
      return [
        { name: 'deep', facts: facts(2.4), speaks: true },
        { name: 'shallow', facts: facts(1), speaks: false },
      ];
    },
  },
  {
    id: 'joint-where-out-of-line',
    topic: 'buried',
    title: 'A universal joint where the chain cannot stand straight',
    scope: 'link',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['misalignment', 'extension'],
    speaks: ({ line, extensions }) =>
      (line.place.misalignment?.high ?? 0) > STRAIGHT_UP_TO_DEG &&
      !extensions.some((extension) => extension.facts.kind === 'universal joint'),
    sentence: ({ line }) =>
      `${line.tag} stands ${sayPlain(line.place.misalignment?.high ?? 0)}° out of line: a universal joint is needed above ${STRAIGHT_UP_TO_DEG}°.`,
    examples: () => {
      const key = atDepth(1.2);
      return [
        { name: 'out of line without joint', facts: { ...key, ...misaligned(12) }, speaks: true },
        { name: 'with joint', facts: { ...key, ...misaligned(12), extensions: [sampleJoint()] }, speaks: false },
        { name: 'straight', facts: { ...key, ...misaligned(2) }, speaks: false },
      ];
    },
  },
  {
    id: 'joint-angle-within-limit',
    topic: 'buried',
    title: 'A universal joint works within its angle',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['misalignment', 'extension'],
    speaks: ({ part, line }) =>
      part.role === 'extension' &&
      part.facts.kind === 'universal joint' &&
      (line.place.misalignment?.high ?? 0) > (part.facts.highestAngle ?? 0),
    sentence: ({ part, line }) =>
      `${line.tag} stands ${sayPlain(line.place.misalignment?.high ?? 0)}° out of line; ${part.name} ${part.number} works up to ${sayPlain(part.role === 'extension' ? (part.facts.highestAngle ?? 0) : 0)}°.`,
    examples: () => [
      { name: 'within', facts: { ...misaligned(12), part: sampleJoint() }, speaks: false },
      {
        name: 'beyond',
        facts: { ...misaligned(12), part: sampleJoint({ facts: { highestAngle: degrees(10) } }) },
        speaks: true,
      },
    ],
  },
  {
    id: 'joint-ripple-told',
    topic: 'buried',
    title: 'A universal joint makes torque and speed rise and fall twice a turn',
    scope: 'link',
    severity: 'note',
    source: 'R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 9',
    speaksOf: ['misalignment', 'extension'],
    speaks: (facts) => facts.extensions.some(({ facts: { kind } }) => kind === 'universal joint'),
    sentence: (facts) => {
      const peak = throughJoint({ factor: { low: ratio(1), high: ratio(1) }, angle: jointAngle(facts) }).high - 1;
      return `${facts.line.tag}: through the joint at ${sayPlain(jointAngle(facts))}° torque and speed peak ${sayPlain(100 * peak)} % above their mean, twice a turn; limiter and highest torque are reckoned with the peak.`;
    },
    examples: () => [
      { name: 'joint', facts: { ...atDepth(1.2), ...misaligned(12), extensions: [sampleJoint()] }, speaks: true },
      { name: 'shaft', facts: { ...atDepth(1.2), extensions: [sampleShaft()] }, speaks: false },
    ],
  },
  {
    id: 'joints-in-phase',
    topic: 'buried',
    title: 'Two joints work in phase and share the angle',
    scope: 'link',
    severity: 'warning',
    source: 'R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 9, double Hooke’s joint',
    speaksOf: ['misalignment', 'extension'],
    speaks: (facts) => pairOf(facts) !== undefined,
    sentence: (facts) => {
      const half = degrees(jointAngle(facts) / 2);
      const out = jointPairRatioAt({
        angles: { first: half, second: half },
        phase: 'out of phase',
        rotation: degrees(0),
      });
      return `${facts.line.tag}: both joints of ${pairOf(facts)?.number} take the same angle, forks of the middle piece in one plane; a quarter turn out of phase the speed would peak ${sayPlain(100 * (out - 1))} % above its mean. It is reckoned as one joint at the whole angle.`;
    },
    examples: () => [
      {
        name: 'double joint',
        facts: { ...atDepth(1.2), ...misaligned(12), extensions: [sampleJoint({ facts: { joints: 2 } })] },
        speaks: true,
      },
      { name: 'one joint', facts: { ...atDepth(1.2), ...misaligned(12), extensions: [sampleJoint()] }, speaks: false },
    ],
  },
  {
    id: 'joint-only-where-needed',
    topic: 'buried',
    title: 'No universal joint in a chain that stands straight',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['misalignment', 'extension'],
    speaks: ({ part, line }) =>
      part.role === 'extension' &&
      part.facts.kind === 'universal joint' &&
      (line.place.misalignment?.high ?? 0) <= STRAIGHT_UP_TO_DEG,
    sentence: ({ part, line }) =>
      `${line.tag} is not said to stand out of line: ${part.name} ${part.number} would only add speed ripple and a joint that can whip.`,
    examples: () => [
      { name: 'straight', facts: { ...misaligned(0), part: sampleJoint() }, speaks: true },
      { name: 'out of line', facts: { ...misaligned(12), part: sampleJoint() }, speaks: false },
    ],
  },
  {
    id: 'surface-box-state',
    topic: 'buried',
    title: 'The surface box can be found, opened and emptied',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['surface_box'],
    speaks: ({ line }) =>
      /jam|stuck|flood|full|cover|missing|not (found|visible)|sand|paved|tarmac|seized/i.test(
        line.place.surfaceBox?.value ?? '',
      ),
    sentence: ({ line }) =>
      `${line.tag}: the surface box is “${line.place.surfaceBox?.value}”: find, open and clear it before the visit, or the visit is lost.`,
    examples: () => [
      { name: 'full of sand', facts: lineFacts({ place: { surfaceBox: said('full of sand') } }), speaks: true },
      { name: 'good', facts: lineFacts({ place: { surfaceBox: said('good') } }), speaks: false },
    ],
  },
  {
    id: 'depth-not-known',
    topic: 'buried',
    title: 'The depth to the nut is asked',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['depth_to_nut'],
    speaks: ({ duty }) =>
      duty.grip.kind === 'nut' && ['assumed', 'rule of thumb'].includes(duty.grip.depthToNut?.basis ?? 'stated'),
    sentence: ({ line, duty }) =>
      `${line.tag}: the depth to the nut is a guess (${sayLength(duty.grip.depthToNut?.low ?? 0)} to ${sayLength(duty.grip.depthToNut?.high ?? 0)}); the key covers it. Measure it with a rod.`,
    examples: () => [
      {
        name: 'assumed',
        facts: lineFacts({ duty: { grip: { ...SAMPLE_NUT, depthToNut: ranged('m', 0.6, 1.5) } } }),
        speaks: true,
      },
      { name: 'stated', facts: lineFacts({ duty: { grip: SAMPLE_NUT } }), speaks: false },
    ],
  },
];
