/*
 * Rules about the place: hazardous areas, enclosed places, services, noise, locks.
 * Invariant: in a zone everything electrical or moving must be marked for it; what is unmarked is refused, air motors included.
 * Not here: reading of markings (engineering/hazardous-marking.ts).
 * Read next: supply.ts.
 */
import { suitsPlace } from '#lib/engineering/hazardous-marking.ts';
import type { Model } from '#lib/equipment/model.ts';
import { decibels } from '#lib/units/quantity.ts';
import type { LineFacts, PartFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, said, stated } from './sample-facts.ts';
import { SAMPLE_AIR, SAMPLE_PETROL, sampleDrive, sampleHead, sampleLimiter, sampleRestraint } from './sample-parts.ts';
import { sayPlain } from './say-number.ts';

const PRACTICE = 'common practice, no source';

const movesOrElectrical = (part: Model): boolean =>
  part.role === 'drive' ||
  part.role === 'head' ||
  (part.role === 'option' && (part.facts.electronic || part.facts.kind === 'torque limiter'));

function misfit({ part, place }: PartFacts): string | null {
  if (place.zone === null || !movesOrElectrical(part)) return null;
  const answer = suitsPlace({
    marking: part.marking,
    place: { zone: place.zone, gasGroup: place.gasGroup, temperatureClass: place.temperatureClass },
  });
  return answer.ok ? null : answer.reason.sentence;
}

const source = (part: Model): string | null => (part.role === 'drive' ? part.facts.power.kind : null);

const inZone = (): LineFacts =>
  lineFacts({ place: { zone: said('1'), gasGroup: said('IIB'), temperatureClass: said('T3') } });
const MARKED = 'II 2 G Ex h IIB T4 Gb';
const airDrive = (marking?: string) =>
  sampleDrive({
    facts: { power: SAMPLE_AIR, soundPressure: decibels(88) },
    ...(marking === undefined ? {} : { marking }),
  });
const petrolDrive = () => sampleDrive({ facts: { power: SAMPLE_PETROL } });

export const PLACE_RULES: readonly Rule[] = [
  {
    id: 'zone-marking',
    topic: 'place',
    title: 'Everything electrical or moving is marked for the zone, gas group and temperature class',
    scope: 'part',
    severity: 'refusal',
    source: '2014/34/EU Annex I and II, 1999/92/EC, IEC 60079-14; from memory and the reference notes',
    speaksOf: ['zone', 'gas_group', 'temperature_class', 'drive', 'head', 'option'],
    speaks: (facts) => misfit(facts) !== null,
    sentence: (facts) => `${facts.line.tag}, ${facts.part.name} ${facts.part.number}: ${misfit(facts) ?? ''}`,
    examples: () => [
      { name: 'unmarked air motor', facts: { ...inZone(), part: airDrive() }, speaks: true },
      { name: 'marked air motor', facts: { ...inZone(), part: airDrive(MARKED) }, speaks: false },
      { name: 'unmarked head', facts: { ...inZone(), part: sampleHead() }, speaks: true },
      { name: 'limiter', facts: { ...inZone(), part: sampleLimiter({ facts: { electronic: true } }) }, speaks: true },
      { name: 'restraint', facts: { ...inZone(), part: sampleRestraint() }, speaks: false },
      { name: 'no zone', facts: { ...lineFacts(), part: sampleDrive() }, speaks: false },
    ],
  },
  {
    id: 'zone-facts-missing',
    topic: 'place',
    title: 'Gas group and temperature class of a zone are asked',
    scope: 'line',
    severity: 'warning',
    source: 'IEC 60079-14, from memory',
    speaksOf: ['zone', 'gas_group', 'temperature_class'],
    speaks: ({ place }) => place.zone !== null && (place.gasGroup === null || place.temperatureClass === null),
    sentence: ({ line, place }) =>
      `${line.tag} lies in zone ${place.zone}; ${place.gasGroup === null ? 'its gas group' : 'its temperature class'} is not given, and the hardest one is assumed.`,
    examples: () => [
      { name: 'zone only', facts: lineFacts({ place: { zone: said('2') } }), speaks: true },
      { name: 'all given', facts: inZone(), speaks: false },
    ],
  },
  {
    id: 'zone-packs-outside',
    topic: 'place',
    title: 'Packs are changed and charged outside the zone',
    scope: 'part',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['zone', 'drive'],
    speaks: ({ part, place }) => source(part) === 'battery' && place.zone !== null,
    sentence: ({ line, place }) => `${line.tag}: change and charge packs only outside zone ${place.zone}.`,
    examples: () => [
      { name: 'battery in a zone', facts: { ...inZone(), part: sampleDrive() }, speaks: true },
      { name: 'air in a zone', facts: { ...inZone(), part: airDrive(MARKED) }, speaks: false },
    ],
  },
  {
    id: 'petrol-not-in-zone',
    topic: 'place',
    title: 'No petrol drive in a zone',
    scope: 'part',
    severity: 'refusal',
    source: '2014/34/EU; EN 1834-1, from memory',
    speaksOf: ['zone', 'drive'],
    speaks: ({ part, place }) => source(part) === 'petrol' && place.zone !== null,
    sentence: ({ line, part, place }) =>
      `${line.tag} lies in zone ${place.zone}; ${part.name} ${part.number} has a petrol engine.`,
    examples: () => [
      { name: 'zone', facts: { ...inZone(), part: petrolDrive() }, speaks: true },
      { name: 'no zone', facts: { ...lineFacts(), part: petrolDrive() }, speaks: false },
    ],
  },
  {
    id: 'petrol-not-enclosed',
    topic: 'place',
    title: 'No petrol drive indoors or in a chamber',
    scope: 'part',
    severity: 'refusal',
    source: 'Carbon monoxide from engines in enclosed places: common practice, no source',
    speaksOf: ['enclosed', 'drive'],
    speaks: ({ part, place }) => source(part) === 'petrol' && place.enclosed,
    sentence: ({ line, part }) =>
      `${line.tag} is enclosed; the exhaust of ${part.name} ${part.number} would gather there.`,
    examples: () => [
      {
        name: 'chamber',
        facts: { ...lineFacts({ place: { enclosed: said(true) } }), part: petrolDrive() },
        speaks: true,
      },
      { name: 'open air', facts: { ...lineFacts(), part: petrolDrive() }, speaks: false },
    ],
  },
  {
    id: 'oxygen-no-petrol-or-oil',
    topic: 'place',
    title: 'Oxygen service takes no fuel, oil, grease or lubricated air',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['service', 'drive'],
    speaks: ({ part, place }) => place.service === 'oxygen' && source(part) === 'petrol',
    sentence: ({ line, part }) =>
      `${line.tag} is in oxygen service; ${part.name} ${part.number} brings fuel and oil near it.`,
    examples: () => {
      const oxygen = lineFacts({ line: { process: { service: said('oxygen') } } });
      return [
        { name: 'petrol', facts: { ...oxygen, part: petrolDrive() }, speaks: true },
        { name: 'air', facts: { ...oxygen, part: airDrive() }, speaks: false },
      ];
    },
  },
  {
    id: 'oxygen-clean',
    topic: 'place',
    title: 'Oxygen service: degreased tools, dry air',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['service'],
    speaks: ({ place }) => place.service === 'oxygen',
    sentence: ({ line }) =>
      `${line.tag} is in oxygen service: everything that touches the valve degreased and bagged, dry air only, no lubricator, no grease on the stem.`,
    examples: () => [
      { name: 'oxygen', facts: lineFacts({ line: { process: { service: said('oxygen') } } }), speaks: true },
      { name: 'water', facts: lineFacts({ line: { process: { service: said('potable') } } }), speaks: false },
    ],
  },
  {
    id: 'potable-hygiene',
    topic: 'place',
    title: 'Drinking water and food: clean equipment kept for it',
    scope: 'line',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['service'],
    speaks: ({ place }) => place.service === 'potable' || place.service === 'food',
    sentence: ({ line, place }) =>
      `${line.tag} is in ${place.service} service: equipment disinfected, never used on sewage, no oil into the chamber.`,
    examples: () => [
      { name: 'potable', facts: lineFacts({ line: { process: { service: said('potable') } } }), speaks: true },
      { name: 'other', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'toxic-or-sewage',
    topic: 'place',
    title: 'Toxic service and sewage: the place’s own rules first',
    scope: 'line',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['service'],
    speaks: ({ place }) => place.service === 'toxic' || place.service === 'sewage',
    sentence: ({ line, place }) =>
      `${line.tag} is in ${place.service} service: packing may leak when the stem turns; gas test, protection and cleaning after use as the place asks.`,
    examples: () => [
      { name: 'toxic', facts: lineFacts({ line: { process: { service: said('toxic') } } }), speaks: true },
      { name: 'other', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'enclosed-permit',
    topic: 'place',
    title: 'An enclosed place is entered under its own rules',
    scope: 'line',
    severity: 'warning',
    source: 'Confined-space rules of the place come first',
    speaksOf: ['enclosed'],
    speaks: ({ place }) => place.enclosed,
    sentence: ({ line }) =>
      `${line.tag} is enclosed: confined-space rules of the place, gas test and a person outside come before any equipment.`,
    examples: () => [
      { name: 'chamber', facts: lineFacts({ place: { enclosed: said(true) } }), speaks: true },
      { name: 'open', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'source-allowed',
    topic: 'place',
    title: 'The site allows the power source',
    scope: 'part',
    severity: 'refusal',
    source: 'The site’s own rule',
    speaksOf: ['sources_allowed', 'drive'],
    speaks: ({ part, site }) => part.role === 'drive' && !site.sourcesAllowed.includes(part.facts.power.kind),
    sentence: ({ part, site }) =>
      `The site allows ${site.sourcesAllowed.join(', ') || 'no power source'}; ${part.name} ${part.number} runs on ${source(part) ?? ''}.`,
    examples: () => [
      {
        name: 'battery only',
        facts: { ...lineFacts({ site: { sourcesAllowed: ['battery'] } }), part: airDrive() },
        speaks: true,
      },
      { name: 'allowed', facts: { ...lineFacts(), part: airDrive() }, speaks: false },
    ],
  },
  {
    id: 'noise-limit',
    topic: 'place',
    title: 'The drive is no louder than the place allows',
    scope: 'part',
    severity: 'refusal',
    source: 'The site’s own rule',
    speaksOf: ['noise_limit', 'drive'],
    speaks: ({ part, place }) =>
      part.role === 'drive' && place.noiseLimit_db !== null && part.facts.soundPressure > place.noiseLimit_db,
    sentence: ({ part, place, line }) =>
      `${line.tag} allows ${sayPlain(place.noiseLimit_db ?? 0)} dB(A); ${part.name} ${part.number} makes ${sayPlain(part.role === 'drive' ? part.facts.soundPressure : 0)}.`,
    examples: () => {
      const quiet = lineFacts({ place: { noiseLimit: stated('dB', 80) } });
      return [
        { name: 'too loud', facts: { ...quiet, part: airDrive() }, speaks: true },
        { name: 'quiet', facts: { ...quiet, part: sampleDrive() }, speaks: false },
      ];
    },
  },
  {
    id: 'locked-never-moved',
    topic: 'place',
    title: 'What someone else has locked or isolated is never moved',
    scope: 'line',
    severity: 'refusal',
    source: 'Isolation rules of the place come first',
    speaksOf: ['locked'],
    speaks: ({ line }) => line.state.locked?.value === true,
    sentence: ({ line }) =>
      `${line.tag} is locked or isolated by someone else: it is never moved. It is planned when whoever locked it has released it in writing.`,
    examples: () => [
      { name: 'locked', facts: lineFacts({ line: { state: { locked: said(true) } } }), speaks: true },
      { name: 'free', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'seized-to-desk',
    topic: 'place',
    title: 'A seized valve goes to the Desk',
    scope: 'line',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['condition'],
    speaks: ({ duty }) => duty.seized,
    sentence: ({ line }) =>
      `${line.tag} is said to be seized: it is not planned; the Desk talks to the customer about freeing or replacing it.`,
    examples: () => [
      { name: 'seized', facts: lineFacts({ duty: { seized: true } }), speaks: true },
      { name: 'free', facts: lineFacts(), speaks: false },
    ],
  },
  {
    id: 'place-assumed',
    topic: 'place',
    title: 'What nobody said of the place is listed',
    scope: 'line',
    severity: 'note',
    source: 'Assumptions of this quote',
    speaksOf: ['zone', 'enclosed', 'anchor', 'faces'],
    speaks: ({ place }) => place.assumed.length > 0,
    sentence: ({ line, place }) => `${line.tag}: ${place.assumed.join(' ')}`,
    examples: () => [
      { name: 'bare line', facts: lineFacts({ line: { place: {} } }), speaks: true },
      { name: 'all said', facts: lineFacts(), speaks: false },
    ],
  },
];
