/*
 * Rules about what takes the reaction: anchor, rating, both ways, facing, following the travel, side load.
 * Invariant: a restraint's own rating covers the highest stall torque, whatever a limiter does.
 * Not here: forces themselves (engineering/reaction.ts).
 * Read next: restraint-site.ts.
 */
import { plateTorque } from '#lib/engineering/ground-plate.ts';
import { needsSecondChain } from '#lib/engineering/reaction.ts';
import type { RestraintModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { kilograms, metres, type NewtonMetres, newtonMetres, newtons } from '#lib/units/quantity.ts';
import type { ReactionFacts, WholeFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, reactionFacts, SAMPLE_NUT, said, sampleCore, sampleGrip, stated } from './sample-facts.ts';
import { sampleHead, sampleKey, sampleRestraint, sampleWheelAdapter } from './sample-parts.ts';
import { sayForce, sayLength, sayMass, sayTorque } from './say-number.ts';
import { goesBothWays, whyBothWays } from './ways-of-working.ts';

const PRACTICE = 'common practice, no source';
const RATING = 'The part’s own rating';
/** A wheel that moves less than this with its stem needs no following; common practice, no source. */
const STILL_UP_TO_M = 0.02;
/** Chain longer than this between head and valve counts as slender; common practice, no source. */
const SLENDER_FROM_M = 0.4;

const travel = (facts: { readonly duty: ReactionFacts['duty'] }): number => facts.duty.grip.travel?.high ?? 0;

function slenderBy({ links }: WholeFacts): number {
  const long = links.map(
    ({ adapter, extensions }) =>
      (adapter.facts.length?.high ?? 0) + extensions.reduce((sum, extension) => sum + extension.facts.length.high, 0),
  );
  return Math.max(0, ...long);
}

const chainArm = sampleRestraint({
  number: 'SR-2',
  facts: { kind: 'reaction arm with chain', directions: 'one way', sideLoad: 'single anchor' },
});

/** What a ground plate holds under the least weight that stands on it; nought where its size or weight is not stated, null for others. */
export function heldByPlate({ facts }: RestraintModel): NewtonMetres | null {
  if (facts.kind !== 'ground plate') return null;
  return plateTorque({
    weight: facts.weightOnPlate ?? kilograms(0),
    friction: WORKING_CONSTANTS.plateFriction,
    side: facts.plateSide ?? metres(0),
    cap: facts.torqueRating,
  });
}

const plateOf = (weight: number): RestraintModel =>
  sampleRestraint({
    number: 'SR-3',
    facts: { kind: 'ground plate', weightOnPlate: kilograms(weight), plateSide: metres(1) },
  });

const whole = (change: Partial<WholeFacts>): WholeFacts => ({
  ...reactionFacts(),
  core: sampleCore(),
  links: [{ adapter: sampleWheelAdapter(), extensions: [] }],
  ...change,
});

export const RESTRAINT_RULES: readonly Rule[] = [
  {
    id: 'restraint-fits-head',
    topic: 'restraint',
    title: 'The restraint mounts on the head',
    scope: 'reaction',
    severity: 'refusal',
    source: RATING,
    speaksOf: ['restraint', 'head'],
    speaks: ({ restraint, core }) => !restraint.facts.headKinds.includes(core.head.facts.kind),
    sentence: ({ restraint, core }) =>
      `${restraint.name} ${restraint.number} mounts on ${restraint.facts.headKinds.join(' or ')} heads; ${core.head.number} is ${core.head.facts.kind}.`,
    examples: () => [
      { name: 'mounts', facts: reactionFacts(), speaks: false },
      {
        name: 'does not',
        facts: reactionFacts({ restraint: sampleRestraint({ facts: { headKinds: ['inline'] } }) }),
        speaks: true,
      },
    ],
  },
  {
    id: 'restraint-covers-stall',
    topic: 'restraint',
    title: 'The highest stall torque cannot overload the restraint',
    scope: 'reaction',
    severity: 'refusal',
    source: RATING,
    speaksOf: ['restraint', 'drive', 'head'],
    speaks: ({ restraint, core }) => core.figures.stallAtValve > restraint.facts.torqueRating + 1e-9,
    sentence: ({ restraint, core }) =>
      `${core.drive.number} with ${core.head.number} stalls at up to ${sayTorque(core.figures.stallAtValve)}; ${restraint.name} ${restraint.number} holds ${sayTorque(restraint.facts.torqueRating)}.`,
    examples: () => [
      { name: 'covered', facts: reactionFacts(), speaks: false },
      {
        name: 'weak',
        facts: reactionFacts({ restraint: sampleRestraint({ facts: { torqueRating: newtonMetres(300) } }) }),
        speaks: true,
      },
    ],
  },
  {
    id: 'restraint-force-within-rating',
    topic: 'restraint',
    title: 'The pull in the restraint stays within its force rating, shock included',
    scope: 'reaction',
    severity: 'refusal',
    source: 'Statics: force = torque / (arm · sine of the pull); the shock factor is common practice, no source',
    speaksOf: ['restraint', 'drive', 'head'],
    speaks: ({ restraint, reaction }) => reaction.force > restraint.facts.forceRating + 1e-9,
    sentence: ({ restraint, reaction }) =>
      `At an arm of ${sayLength(reaction.arm_m)} the pull reaches ${sayForce(reaction.force)}; ${restraint.name} ${restraint.number} holds ${sayForce(restraint.facts.forceRating)}.`,
    examples: () => [
      { name: 'within', facts: reactionFacts(), speaks: false },
      { name: 'beyond', facts: reactionFacts({ reaction: { force: newtons(5000) } }), speaks: true },
    ],
  },
  {
    id: 'ground-plate-holds',
    topic: 'restraint',
    title: 'A ground plate holds no more than its weight gives by friction',
    scope: 'reaction',
    severity: 'refusal',
    source: 'Friction of evenly spread pressure on a square, integrated; the friction of 0.4 is judgement, no source',
    speaksOf: ['restraint', 'drive', 'head'],
    speaks: ({ restraint, core }) =>
      core.figures.highestAtValve > (heldByPlate(restraint) ?? Number.POSITIVE_INFINITY) + 1e-9,
    sentence: ({ restraint, core }) =>
      restraint.facts.weightOnPlate === undefined || restraint.facts.plateSide === undefined
        ? `${restraint.name} ${restraint.number}: side and least weight of the plate are not stated, so that nothing is known of what it holds.`
        : `${core.drive.number} with ${core.head.number} can bring ${sayTorque(core.figures.highestAtValve)}; ${restraint.name} ${restraint.number} under its least weight of ${sayMass(restraint.facts.weightOnPlate)} slips at ${sayTorque(heldByPlate(restraint) ?? 0)}.`,
    examples: () => {
      // 0.4 · 300 kg · 9.81 m/s² · 0.383 · 1 m = 450 N·m against 360.
      const core = sampleCore({ figures: { highestAtValve: newtonMetres(360) } });
      return [
        { name: 'heavy enough', facts: reactionFacts({ core, restraint: plateOf(300) }), speaks: false },
        { name: 'one person', facts: reactionFacts({ core, restraint: plateOf(75) }), speaks: true },
        {
          name: 'nobody stated it',
          facts: reactionFacts({ core, restraint: sampleRestraint({ facts: { kind: 'ground plate' } }) }),
          speaks: true,
        },
        { name: 'no plate', facts: reactionFacts({ core }), speaks: false },
      ];
    },
  },
  {
    id: 'restraint-both-ways',
    topic: 'restraint',
    title: 'Reversing work needs a restraint that holds both ways, or a second chain',
    scope: 'reaction',
    severity: 'refusal',
    source: 'Statics: a chain or strap only pulls',
    speaksOf: ['strokes', 'restraint', 'accessory'],
    speaks: (facts) =>
      needsSecondChain({
        directions: facts.restraint.facts.directions,
        work: goesBothWays(facts) ? 'both ways' : 'one way',
      }) && facts.secondChain === null,
    sentence: ({ restraint, ...facts }) =>
      `${facts.line.tag} ${whyBothWays(facts)}; ${restraint.name} ${restraint.number} holds one way and no second chain is with it.`,
    examples: () => [
      { name: 'one way, two strokes', facts: reactionFacts({ restraint: chainArm }), speaks: true },
      {
        name: 'one way, one stroke',
        facts: reactionFacts({ ...lineFacts({ duty: { strokes: 1 } }), restraint: chainArm }),
        speaks: false,
      },
      {
        name: 'one stroke of a stiff valve',
        facts: reactionFacts({
          ...lineFacts({ line: { state: { condition: said('stiff') } }, duty: { strokes: 1 } }),
          restraint: chainArm,
        }),
        speaks: true,
      },
      {
        name: 'one stroke, nobody says which way it closes',
        facts: reactionFacts({ ...lineFacts({ duty: { strokes: 1, closes: 'unknown' } }), restraint: chainArm }),
        speaks: true,
      },
      { name: 'both ways', facts: reactionFacts(), speaks: false },
    ],
  },
  {
    id: 'restraint-faces',
    topic: 'restraint',
    title: 'The restraint works whichever way the wheel faces',
    scope: 'part',
    severity: 'refusal',
    source: RATING,
    speaksOf: ['faces', 'restraint'],
    speaks: ({ part, place }) => part.role === 'restraint' && !part.facts.facings.includes(place.faces),
    sentence: ({ part, place, line }) =>
      `${line.tag} faces ${place.faces}; ${part.name} ${part.number} is for ${part.role === 'restraint' ? part.facts.facings.join(' or ') : ''}.`,
    examples: () => [
      {
        name: 'up only',
        facts: {
          ...lineFacts({ place: { faces: said('side') } }),
          part: sampleRestraint({ facts: { facings: ['up'] } }),
        },
        speaks: true,
      },
      {
        name: 'any',
        facts: { ...lineFacts({ place: { faces: said('side') } }), part: sampleRestraint() },
        speaks: false,
      },
    ],
  },
  {
    id: 'restraint-follows-travel',
    topic: 'restraint',
    title: 'A wheel that rises with its stem needs a restraint that follows',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['stem', 'travel', 'restraint'],
    speaks: (facts) =>
      facts.part.role === 'restraint' &&
      !facts.part.facts.followsTravel &&
      facts.duty.grip.wheelRises !== 'no' &&
      (facts.duty.grip.travel === undefined || travel(facts) > STILL_UP_TO_M),
    sentence: (facts) =>
      `${facts.line.tag}: the wheel ${facts.duty.grip.wheelRises === 'maybe' ? 'may rise' : 'rises'} with its stem${travel(facts) > 0 ? ` by ${sayLength(travel(facts))}` : ''}; ${facts.part.name} ${facts.part.number} does not follow.`,
    examples: () => {
      const rising = lineFacts({ duty: { grip: sampleGrip({ wheelRises: 'yes', travel: stated('m', 0.2) }) } });
      const fixed = sampleRestraint({ facts: { followsTravel: false } });
      return [
        { name: 'fixed bar on a rising wheel', facts: { ...rising, part: fixed }, speaks: true },
        { name: 'follows', facts: { ...rising, part: sampleRestraint() }, speaks: false },
        { name: 'wheel stays', facts: { ...lineFacts(), part: fixed }, speaks: false },
      ];
    },
  },
  {
    id: 'side-load-on-slender',
    topic: 'restraint',
    title: 'A single anchor pulls a slender chain sideways',
    scope: 'whole',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['restraint', 'extension', 'adapter', 'driven_by'],
    speaks: (facts) =>
      facts.restraint.facts.sideLoad === 'single anchor' &&
      (slenderBy(facts) > SLENDER_FROM_M || facts.line.interface.drivenBy?.value === 'extension spindle'),
    sentence: (facts) =>
      `${facts.line.tag}: ${facts.restraint.name} ${facts.restraint.number} pulls with up to ${sayForce(facts.reaction.sideLoad)} sideways on a slender chain: a twin-point arm, yoke clamp or stand is better; steady the head by hand-free means.`,
    examples: () => [
      {
        name: 'chain arm on a long key',
        facts: whole({
          ...lineFacts({ duty: { grip: SAMPLE_NUT } }),
          restraint: chainArm,
          links: [{ adapter: sampleKey(), extensions: [] }],
        }),
        speaks: true,
      },
      {
        name: 'twin-point arm on it',
        facts: whole({ links: [{ adapter: sampleKey(), extensions: [] }] }),
        speaks: false,
      },
      { name: 'chain arm on a wheel', facts: whole({ restraint: chainArm }), speaks: false },
    ],
  },
  {
    id: 'reaction-told',
    topic: 'restraint',
    title: 'The crew knows the pull that the anchor must hold',
    scope: 'reaction',
    severity: 'note',
    source: 'Statics: force = torque / (arm · sine of the pull); the shock factor is common practice, no source',
    speaksOf: ['restraint'],
    speaks: ({ reaction }) => reaction.force > 0,
    sentence: ({ restraint, reaction, line }) =>
      `${line.tag}: ${restraint.name} ${restraint.number} at an arm of ${sayLength(reaction.arm_m)} pulls with up to ${sayForce(reaction.force)}, shock included; no drive is held by hand alone.`,
    examples: () => [
      { name: 'any', facts: reactionFacts(), speaks: true },
      { name: 'no pull', facts: reactionFacts({ reaction: { force: newtons(0) } }), speaks: false },
    ],
  },
  {
    id: 'right-angle-input-reaction',
    topic: 'restraint',
    title: 'A right-angle head twists the drive’s handle as well',
    scope: 'core',
    severity: 'note',
    source: 'Balance of a gear head',
    speaksOf: ['head', 'drive'],
    speaks: ({ core }) => core.head.facts.kind === 'right-angle',
    sentence: ({ core }) =>
      `Head ${core.head.number} is right-angled: the drive itself is twisted by up to ${sayTorque(core.figures.stallAtDrive)} about its own axis; both hands on the handles, feet firm.`,
    examples: () => [
      {
        name: 'right angle',
        facts: { ...lineFacts(), core: sampleCore({ head: sampleHead({ facts: { kind: 'right-angle' } }) }) },
        speaks: true,
      },
      { name: 'open centre', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
    ],
  },
];
