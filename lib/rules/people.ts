/*
 * Rules about people and transport: vibration, noise, lifts, lithium packs, petrol machines.
 * Invariant: these are screening figures for one valve; the crew's day is summed elsewhere.
 * Not here: the day's exposure and cases (packing, documents).
 * Read next: house.ts.
 */
import { teamCapability } from '#lib/engineering/lifting.ts';
import { NOISE_UPPER_ACTION } from '#lib/engineering/noise.ts';
import { dailyVibration, VIBRATION_ACTION_VALUE } from '#lib/engineering/vibration.ts';
import { decibels, metresPerSecondSquared, seconds, wattHours } from '#lib/units/quantity.ts';
import type { CoreFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, sampleCore, sampleSite } from './sample-facts.ts';
import { SAMPLE_PETROL, sampleDrive, sampleHead } from './sample-parts.ts';
import { sayMass, sayMinutes, sayPlain } from './say-number.ts';

/** One person lifts up to this for screening; HSE INDG383 filter at waist height, from memory. */
const ONE_PERSON_KG = 25;
/** Two persons lift up to this for screening: two thirds of their sum. */
const TWO_PERSONS_KG = teamCapability([ONE_PERSON_KG, ONE_PERSON_KG]);
/** Watt-hours above which a lithium pack counts as large in transport: UN special provision 188, from memory. */
const LARGE_PACK_WH = 100;

const exposure = ({ core, duty }: CoreFacts): number =>
  dailyVibration([{ vibration: core.drive.facts.vibration, time: seconds(core.figures.runTime * duty.qty) }]);

export const PEOPLE_RULES: readonly Rule[] = [
  {
    id: 'vibration-screening',
    topic: 'people',
    title: 'Hand-arm vibration of this line alone stays below the action value',
    scope: 'core',
    severity: 'warning',
    source: 'Directive 2002/44/EC: action value 2.5 m/s² A(8); screening figure for one person',
    speaksOf: ['qty', 'drive'],
    speaks: (facts) => exposure(facts) > VIBRATION_ACTION_VALUE,
    sentence: (facts) =>
      `${facts.line.tag}: ${sayMinutes(facts.core.figures.runTime * facts.duty.qty)} with ${facts.core.drive.number} is ${sayPlain(exposure(facts))} m/s² A(8) for one person, above the action value of ${sayPlain(VIBRATION_ACTION_VALUE)}: share the work, spread it over days.`,
    examples: () => {
      const shaky = sampleDrive({ facts: { vibration: metresPerSecondSquared(8) } });
      return [
        {
          name: 'long and shaky',
          facts: { ...lineFacts(), core: sampleCore({ drive: shaky, figures: { runTime: seconds(4 * 3600) } }) },
          speaks: true,
        },
        { name: 'short', facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
      ];
    },
  },
  {
    id: 'hearing-protection',
    topic: 'people',
    title: 'Hearing protection at a loud drive',
    scope: 'part',
    severity: 'note',
    source: 'Directive 2003/10/EC: upper action value 85 dB(A); screening figure',
    speaksOf: ['drive'],
    speaks: ({ part }) => part.role === 'drive' && part.facts.soundPressure >= NOISE_UPPER_ACTION,
    sentence: ({ part }) =>
      `${part.name} ${part.number} makes ${sayPlain(part.role === 'drive' ? part.facts.soundPressure : 0)} dB(A) at the ear: hearing protection for everyone near.`,
    examples: () => [
      {
        name: 'loud',
        facts: { ...lineFacts(), part: sampleDrive({ facts: { soundPressure: decibels(92) } }) },
        speaks: true,
      },
      { name: 'quiet', facts: { ...lineFacts(), part: sampleDrive() }, speaks: false },
    ],
  },
  {
    id: 'lift-two-persons',
    topic: 'people',
    title: 'A heavy piece is lifted by two',
    scope: 'part',
    severity: 'note',
    source: 'HSE INDG383 filter, from memory; two persons two thirds of their sum, HSE L23; screening figure',
    speaksOf: ['persons_per_crew'],
    speaks: ({ part, site }) => part.mass > ONE_PERSON_KG && part.mass <= TWO_PERSONS_KG && site.personsPerCrew > 1,
    sentence: ({ part }) => `${part.name} ${part.number} has ${sayMass(part.mass)}: two persons lift it.`,
    examples: () => [
      { name: 'heavy', facts: { ...lineFacts(), part: sampleHead({ mass_kg: 32 }) }, speaks: true },
      { name: 'light', facts: { ...lineFacts(), part: sampleHead() }, speaks: false },
    ],
  },
  {
    id: 'lift-beyond-crew',
    topic: 'people',
    title: 'The crew can lift every piece',
    scope: 'part',
    severity: 'refusal',
    source: 'HSE INDG383 filter, from memory; two persons two thirds of their sum, HSE L23; screening figure',
    speaksOf: ['persons_per_crew'],
    speaks: ({ part, site }) => part.mass > (site.personsPerCrew > 1 ? TWO_PERSONS_KG : ONE_PERSON_KG),
    sentence: ({ part, site }) =>
      `${part.name} ${part.number} has ${sayMass(part.mass)}; a crew of ${site.personsPerCrew} does not lift that by hand.`,
    examples: () => [
      {
        name: 'one person',
        facts: { ...lineFacts(), site: sampleSite({ personsPerCrew: 1 }), part: sampleHead({ mass_kg: 32 }) },
        speaks: true,
      },
      { name: 'two persons', facts: { ...lineFacts(), part: sampleHead({ mass_kg: 32 }) }, speaks: false },
      { name: 'too heavy for two', facts: { ...lineFacts(), part: sampleHead({ mass_kg: 36 }) }, speaks: true },
    ],
  },
  {
    id: 'lithium-large-packs',
    topic: 'people',
    title: 'Packs over 100 Wh are declared when they travel by air or sea',
    scope: 'part',
    severity: 'warning',
    source: 'UN 3480 and 3481, special provision 188, from memory',
    speaksOf: ['transport', 'drive'],
    speaks: ({ part, site }) =>
      part.lithium !== undefined && part.lithium.energy > LARGE_PACK_WH && site.transport !== 'road',
    sentence: ({ part, site }) =>
      `${part.name} ${part.number} holds packs of ${sayPlain(part.lithium?.energy ?? 0)} Wh: dangerous goods by ${site.transport}, to be declared and booked.`,
    examples: () => {
      const large = { ...sampleDrive(), lithium: { energy: wattHours(180), packs: 2 } };
      return [
        { name: 'by air', facts: { ...lineFacts({ site: { transport: 'air' } }), part: large }, speaks: true },
        { name: 'by road', facts: { ...lineFacts(), part: large }, speaks: false },
      ];
    },
  },
  {
    id: 'petrol-drained',
    topic: 'people',
    title: 'Petrol machines travel drained; fuel is never in the case',
    scope: 'part',
    severity: 'warning',
    source: 'UN 3528 by road special provision 363, from memory; common practice, no source',
    speaksOf: ['transport', 'drive'],
    speaks: ({ part }) => part.role === 'drive' && part.facts.power.kind === 'petrol',
    sentence: ({ part }) =>
      `${part.name} ${part.number} travels drained, and fuel is never in its case; fuel is bought on site.`,
    examples: () => [
      {
        name: 'petrol',
        facts: { ...lineFacts(), part: sampleDrive({ facts: { power: SAMPLE_PETROL } }) },
        speaks: true,
      },
      { name: 'battery', facts: { ...lineFacts(), part: sampleDrive() }, speaks: false },
    ],
  },
];
