/*
 * Rules about where a restraint may be anchored: structure, yoke, vehicle, ground, street, and what must not be used.
 * Invariant: an anchor that the line or site rules out is a refusal; one that nobody mentions is a warning.
 * Not here: ratings and forces (restraint.ts).
 * Read next: place.ts.
 */
import { isUnfitForPlate } from '#lib/engineering/ground-plate.ts';
import type { RestraintModel } from '#lib/equipment/model.ts';
import { metres } from '#lib/units/quantity.ts';
import type { LineFacts, PartFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, SAMPLE_NUT, said, stated } from './sample-facts.ts';
import { sampleRestraint } from './sample-parts.ts';
import { sayLength, sayMass } from './say-number.ts';

const PRACTICE = 'common practice, no source';
/** Needs that are an anchor standing near the valve. */
const STANDING_ANCHORS: readonly string[] = ['structure', 'large pipe', 'flange', 'yoke'];

const restraintOf = ({ part }: PartFacts): RestraintModel | null => (part.role === 'restraint' ? part : null);

/** Which of a restraint's alternatives the line's anchor meets; null when it needs no standing anchor. */
function anchorAnswer(restraint: RestraintModel, { place }: LineFacts): 'met' | 'not met' | 'unknown' | null {
  const wanted = restraint.facts.needs.filter((need) => STANDING_ANCHORS.includes(need));
  if (wanted.length === 0 || wanted.length < restraint.facts.needs.length) return null;
  if (place.anchor === 'unknown' || place.anchor === 'other') return 'unknown';
  if (wanted.includes(place.anchor)) return 'met';
  return 'not met';
}

function yokeAnswer({ line, duty }: LineFacts): 'met' | 'not met' | 'unknown' {
  if (duty.movement === 'keyed' || duty.grip.kind === 'nut') return 'not met';
  const stem = line.stem.kind?.value;
  if (stem === undefined) return 'unknown';
  return stem === 'non-rising' ? 'not met' : 'met';
}

function allowedBySite(restraint: RestraintModel, { place }: LineFacts): boolean {
  if (place.anchorsAllowed === null) return true;
  const anchors = restraint.facts.needs.filter((need) => STANDING_ANCHORS.includes(need) || need === 'vehicle');
  return anchors.length === 0 || anchors.some((need) => place.anchorsAllowed?.includes(need));
}

const at = (change: Parameters<typeof lineFacts>[0], part = sampleRestraint()): PartFacts => ({
  ...lineFacts(change),
  part,
});

const yokeClamp = sampleRestraint({ facts: { kind: 'yoke clamp', needs: ['yoke'] } });
const towBar = sampleRestraint({ facts: { kind: 'tow-bar brace', needs: ['vehicle'], reach: metres(3) } });
const plate = sampleRestraint({ facts: { kind: 'ground plate', needs: ['firm ground'] } });
const stand = sampleRestraint({ facts: { kind: 'street stand', needs: ['street surface'] } });

export const RESTRAINT_SITE_RULES: readonly Rule[] = [
  {
    id: 'anchor-there',
    topic: 'restraint',
    title: 'The anchor that the restraint needs is there',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['anchor', 'restraint'],
    speaks: (facts) => {
      const restraint = restraintOf(facts);
      if (restraint === null || restraint.facts.kind === 'yoke clamp') return false;
      return anchorAnswer(restraint, facts) === 'not met';
    },
    sentence: (facts) =>
      `${facts.line.tag}: ${facts.part.name} ${facts.part.number} needs ${restraintOf(facts)?.facts.needs.join(' or ')}; the anchor there is “${facts.place.anchorText}”.`,
    examples: () => [
      { name: 'structure there', facts: at({}), speaks: false },
      { name: 'none there', facts: at({ place: { anchor: said('none') } }), speaks: true },
      { name: 'nobody says', facts: at({ line: { place: {} } }), speaks: false },
    ],
  },
  {
    id: 'anchor-not-said',
    topic: 'restraint',
    title: 'An anchor that nobody mentions is looked for before the visit',
    scope: 'part',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['anchor', 'restraint'],
    speaks: (facts) => {
      const restraint = restraintOf(facts);
      return (
        restraint !== null && restraint.facts.kind !== 'yoke clamp' && anchorAnswer(restraint, facts) === 'unknown'
      );
    },
    sentence: (facts) =>
      `${facts.line.tag}: ${facts.part.name} ${facts.part.number} needs ${restraintOf(facts)?.facts.needs.join(' or ')}, and the list does not say that one is there: assumed, to be looked at before the visit.`,
    examples: () => [
      { name: 'nobody says', facts: at({ line: { place: {} } }), speaks: true },
      { name: 'said', facts: at({}), speaks: false },
    ],
  },
  {
    id: 'anchor-must-not-be-used',
    topic: 'restraint',
    title: 'Small pipe, handrail, tray, ladder or scaffold is no anchor',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['anchor'],
    speaks: ({ place }) => place.anchor === 'forbidden',
    sentence: ({ line, place }) =>
      `${line.tag}: “${place.anchorText}” must not take the reaction; small pipe, handrails, trays, ladders and scaffold are no anchors.`,
    examples: () => [
      { name: 'handrail', facts: lineFacts({ place: { anchor: said('handrail') } }), speaks: true },
      { name: 'small steel pipe', facts: lineFacts({ place: { anchor: said('small steel pipe') } }), speaks: true },
      { name: 'pipe of 2 inches', facts: lineFacts({ place: { anchor: said('2 in steel pipe') } }), speaks: true },
      { name: 'pipe DN 50', facts: lineFacts({ place: { anchor: said('pipe DN50 beside it') } }), speaks: true },
      { name: 'pipe DN 300', facts: lineFacts({ place: { anchor: said('pipe DN300') } }), speaks: false },
      { name: 'pipe of 12 inches', facts: lineFacts({ place: { anchor: said('12 in pipe') } }), speaks: false },
      { name: 'structure', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'anchor-allowed-by-site',
    topic: 'restraint',
    title: 'The site allows the anchor',
    scope: 'part',
    severity: 'refusal',
    source: 'The site’s own rule',
    speaksOf: ['anchors_allowed', 'restraint'],
    speaks: (facts) => {
      const restraint = restraintOf(facts);
      return restraint !== null && !allowedBySite(restraint, facts);
    },
    sentence: (facts) =>
      `The site allows ${facts.place.anchorsAllowed?.length === 0 ? 'no anchors' : `${facts.place.anchorsAllowed?.join(', ')} as anchors`}; ${facts.part.name} ${facts.part.number} needs ${restraintOf(facts)?.facts.needs.join(' or ')}.`,
    examples: () => [
      { name: 'not allowed', facts: at({ site: { anchorsAllowed: ['yoke'] } }), speaks: true },
      { name: 'allowed', facts: at({ site: { anchorsAllowed: ['structure'] } }), speaks: false },
      { name: 'nothing said', facts: at({}), speaks: false },
    ],
  },
  {
    id: 'yoke-there',
    topic: 'restraint',
    title: 'A yoke clamp needs a yoke',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['stem', 'anchor', 'restraint'],
    speaks: (facts) =>
      restraintOf(facts)?.facts.kind === 'yoke clamp' && facts.place.anchor !== 'yoke' && yokeAnswer(facts) !== 'met',
    sentence: (facts) =>
      `${facts.line.tag}: ${facts.part.name} ${facts.part.number} clamps a yoke, and nothing says that this valve has one (a rising stem has).`,
    examples: () => [
      {
        name: 'rising stem',
        facts: at({ line: { stem: { kind: said('rising through the wheel') } } }, yokeClamp),
        speaks: false,
      },
      { name: 'yoke as anchor', facts: at({ place: { anchor: said('yoke') } }, yokeClamp), speaks: false },
      { name: 'non-rising', facts: at({ line: { stem: { kind: said('non-rising') } } }, yokeClamp), speaks: true },
      { name: 'nobody says', facts: at({}, yokeClamp), speaks: true },
    ],
  },
  {
    id: 'vehicle-near-enough',
    topic: 'restraint',
    title: 'A tow-bar brace needs a vehicle within its reach',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['vehicle_distance', 'vehicle_access', 'restraint'],
    speaks: (facts) => {
      const restraint = restraintOf(facts);
      if (restraint === null || !restraint.facts.needs.includes('vehicle')) return false;
      const { vehicle_m } = facts.place;
      return vehicle_m === 'none' || (vehicle_m !== 'near' && vehicle_m > restraint.facts.reach);
    },
    sentence: (facts) => {
      const { vehicle_m } = facts.place;
      const where =
        typeof vehicle_m === 'number' ? `a vehicle comes within ${sayLength(vehicle_m)}` : 'no vehicle comes near';
      return `${facts.line.tag}: ${where}; ${facts.part.name} ${facts.part.number} needs one within ${sayLength(restraintOf(facts)?.facts.reach ?? 0)}.`;
    },
    examples: () => [
      { name: 'near', facts: at({ place: { vehicleDistance: stated('m', 2) } }, towBar), speaks: false },
      { name: 'far', facts: at({ place: { vehicleDistance: stated('m', 8) } }, towBar), speaks: true },
      { name: 'site lets vehicles in', facts: at({}, towBar), speaks: false },
      { name: 'site lets none in', facts: at({ site: { vehicleAccess: false } }, towBar), speaks: true },
    ],
  },
  {
    id: 'vehicle-braked',
    topic: 'restraint',
    title: 'The vehicle is braked and chocked and nobody stands between',
    scope: 'part',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['restraint', 'vehicle_distance'],
    speaks: (facts) => restraintOf(facts)?.facts.kind === 'tow-bar brace',
    sentence: (facts) =>
      `${facts.line.tag}: vehicle within ${sayLength(restraintOf(facts)?.facts.reach ?? 0)}, brake on, wheels chocked, nobody between vehicle and valve.`,
    examples: () => [
      { name: 'tow bar', facts: at({}, towBar), speaks: true },
      { name: 'other', facts: at({}), speaks: false },
    ],
  },
  {
    id: 'ground-fit-for-plate',
    topic: 'restraint',
    title: 'No plate or prop on grating, slope, ice or a chamber roof',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['surface', 'restraint'],
    speaks: (facts) => {
      const needs = restraintOf(facts)?.facts.needs ?? [];
      const standsOnGround = needs.some((need) => ['firm ground', 'hard floor', 'street surface'].includes(need));
      return standsOnGround && isUnfitForPlate(facts.place.surface);
    },
    sentence: (facts) =>
      `${facts.line.tag} stands on “${facts.place.surface}”; ${facts.part.name} ${facts.part.number} must not be used there.`,
    examples: () => [
      { name: 'grating', facts: at({ place: { surface: said('steel grating') } }, plate), speaks: true },
      { name: 'concrete', facts: at({ place: { surface: said('concrete') } }, plate), speaks: false },
    ],
  },
  {
    id: 'ground-weight-stays',
    topic: 'restraint',
    title: 'A ground plate holds only while its weight stands on it',
    scope: 'part',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['restraint'],
    speaks: (facts) => restraintOf(facts)?.facts.kind === 'ground plate',
    sentence: (facts) =>
      `${facts.line.tag}: ${facts.part.name} ${facts.part.number} holds only on level firm ground with ${sayMass(restraintOf(facts)?.facts.weightOnPlate ?? 0)} or more on it all the time; nobody steps off while the drive runs.`,
    examples: () => [
      { name: 'plate', facts: at({}, plate), speaks: true },
      { name: 'other', facts: at({}), speaks: false },
    ],
  },
  {
    id: 'street-stand-for-keys',
    topic: 'restraint',
    title: 'A street stand is for keyed valves in a street',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['driven_by', 'restraint'],
    speaks: (facts) => restraintOf(facts)?.facts.kind === 'street stand' && facts.duty.grip.kind !== 'nut',
    sentence: (facts) =>
      `${facts.line.tag} has a wheel; ${facts.part.name} ${facts.part.number} stands over a valve key.`,
    examples: () => [
      { name: 'wheel', facts: at({}, stand), speaks: true },
      { name: 'nut', facts: at({ duty: { grip: SAMPLE_NUT } }, stand), speaks: false },
    ],
  },
  {
    id: 'ground-assumed-firm',
    topic: 'restraint',
    title: 'Ground that nobody described is looked at',
    scope: 'part',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['surface', 'restraint'],
    speaks: (facts) => {
      const needs = restraintOf(facts)?.facts.needs ?? [];
      return (
        needs.some((need) => ['firm ground', 'hard floor', 'street surface'].includes(need)) &&
        facts.place.surface === ''
      );
    },
    sentence: (facts) =>
      `${facts.line.tag}: nobody says what the ground is; firm and level ground is assumed for ${facts.part.name} ${facts.part.number}.`,
    examples: () => [
      { name: 'not said', facts: at({}, plate), speaks: true },
      { name: 'said', facts: at({ place: { surface: said('concrete') } }, plate), speaks: false },
    ],
  },
  {
    id: 'workshop-enquiry',
    topic: 'restraint',
    title: 'A purpose-made restraint is an enquiry to the workshop',
    scope: 'part',
    severity: 'warning',
    source: 'house rule',
    speaksOf: ['restraint'],
    speaks: (facts) => facts.part.madeToOrder,
    sentence: (facts) =>
      `${facts.line.tag}: no stock restraint fits; ${facts.part.name} ${facts.part.number} is made to order: workshop enquiry, with photos and measures of the place, before a date is promised.`,
    examples: () => [
      { name: 'made to order', facts: at({}, sampleRestraint({ madeToOrder: true })), speaks: true },
      { name: 'stock', facts: at({}), speaks: false },
    ],
  },
];
