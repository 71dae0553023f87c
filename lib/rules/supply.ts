/*
 * Rules about what feeds a drive: packs and where they are charged, air at the tool.
 * Invariant: what a drive gets is judged after everything between supply and tool has taken its share.
 * Not here: the place itself (place.ts) and what a crew carries (kits).
 * Read next: method.ts.
 */
import { coldShare, packEnergy } from '#lib/engineering/energy.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { celsius, cubicMetresPerSecond, joules, ratio } from '#lib/units/quantity.ts';
import type { CoreFacts, LineFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, ranged, said, sampleCore, stated } from './sample-facts.ts';
import { SAMPLE_AIR, SAMPLE_GEAR, sampleDrive } from './sample-parts.ts';
import { sayAirFlow, sayPlain, sayPressure } from './say-number.ts';

const PRACTICE = 'common practice, no source';

/** Work at the valve that one pack gives: what is kept back, the cold, the drive's and the head's losses taken off. */
function workOfPack({ core, site }: CoreFacts): number {
  const { power } = core.drive.facts;
  if (power.kind !== 'battery') return Number.POSITIVE_INFINITY;
  const nominal = packEnergy({ voltage: power.voltage, capacity_ah: power.capacity_ah }) * 3600;
  const share = WORKING_CONSTANTS.packShare * coldShare(celsius(site.temperature?.low ?? 20));
  return nominal * share * power.efficiency * core.head.facts.efficiency.low;
}

const inZone = (): LineFacts =>
  lineFacts({ place: { zone: said('1'), gasGroup: said('IIB'), temperatureClass: said('T3') } });
const airDrive = () => sampleDrive({ facts: { power: SAMPLE_AIR } });

export const SUPPLY_RULES: readonly Rule[] = [
  {
    id: 'zone-no-pack-change',
    topic: 'place',
    title: 'No pack change in a zone: one pack must last for the visit',
    scope: 'core',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['zone', 'drive'],
    speaks: (facts) => facts.place.zone !== null && facts.core.figures.energyPerVisit > workOfPack(facts),
    sentence: (facts) =>
      `${facts.line.tag} takes ${sayPlain(facts.core.figures.energyPerVisit / 3600)} Wh at the valve, more than one pack of ${facts.core.drive.number} gives, and packs are not changed in zone ${facts.place.zone}.`,
    examples: () => [
      {
        name: 'two packs',
        facts: { ...inZone(), core: sampleCore({ figures: { energyPerVisit: joules(2e6) } }) },
        speaks: true,
      },
      { name: 'one pack', facts: { ...inZone(), core: sampleCore() }, speaks: false },
      {
        // A pack of 36 V and 5 Ah gives 180 · 0.8 · 0.6 · 0.8 = 69 Wh at the valve, and at −10 °C 45 Wh; 200 kJ are 56 Wh.
        name: 'one pack would do, and a cold one does not',
        facts: {
          ...inZone(),
          site: { ...inZone().site, temperature: ranged('°C', -10, 0) },
          core: sampleCore({ figures: { energyPerVisit: joules(2e5) } }),
        },
        speaks: true,
      },
      {
        name: 'no zone',
        facts: { ...lineFacts(), core: sampleCore({ figures: { energyPerVisit: joules(2e6) } }) },
        speaks: false,
      },
    ],
  },
  {
    id: 'air-there',
    topic: 'place',
    title: 'An air drive needs the site’s air',
    scope: 'part',
    severity: 'refusal',
    source: PRACTICE,
    speaksOf: ['air_pressure', 'air_flow', 'drive'],
    speaks: ({ part, site }) =>
      part.role === 'drive' &&
      part.facts.power.kind === 'air' &&
      (site.airPressure === undefined ||
        site.airPressure.low < part.facts.power.lowestPressure ||
        (site.airFlow !== undefined && site.airFlow.low < part.facts.power.consumption)),
    sentence: ({ part, site }) => {
      const need =
        part.role === 'drive' && part.facts.power.kind === 'air'
          ? `${sayPressure(part.facts.power.lowestPressure)} and ${sayAirFlow(part.facts.power.consumption)} of free air`
          : '';
      const has =
        site.airPressure === undefined
          ? 'says nothing of air'
          : `gives ${sayPressure(site.airPressure.low)}${site.airFlow === undefined ? '' : ` and ${sayAirFlow(site.airFlow.low)}`}`;
      return `${part.name} ${part.number} needs ${need}; the site ${has}.`;
    },
    examples: () => {
      const { airPressure: _none, ...noAir } = lineFacts().site;
      return [
        { name: 'air there', facts: { ...lineFacts(), part: airDrive() }, speaks: false },
        { name: 'nothing said', facts: { ...lineFacts(), site: noAir, part: airDrive() }, speaks: true },
        {
          name: 'too little flow',
          facts: { ...lineFacts({ site: { airFlow: stated('m³/s', cubicMetresPerSecond(0.01)) } }), part: airDrive() },
          speaks: true,
        },
      ];
    },
  },
  {
    id: 'charging-told',
    topic: 'place',
    title: 'Where packs are charged is asked',
    scope: 'part',
    severity: 'note',
    source: PRACTICE,
    speaksOf: ['mains_voltage', 'mains_plug', 'drive'],
    speaks: ({ part, site }) =>
      part.role === 'drive' &&
      part.facts.power.kind === 'battery' &&
      (site.mainsVoltage === undefined || site.mainsPlug === undefined),
    sentence: ({ part }) =>
      `${part.name} ${part.number}: voltage and plug of the charging place are not given; tell them before the kit is packed.`,
    examples: () => [
      { name: 'not given', facts: { ...lineFacts(), part: sampleDrive() }, speaks: true },
      {
        name: 'given',
        facts: { ...lineFacts({ site: { mainsVoltage: 230, mainsPlug: 'CEE 7/7' } }), part: sampleDrive() },
        speaks: false,
      },
    ],
  },
  {
    id: 'air-pressure-at-tool',
    topic: 'place',
    title: 'The tool gets the pressure it needs',
    scope: 'core',
    severity: 'refusal',
    source: 'The part’s own rating',
    speaksOf: ['air_pressure', 'drive'],
    speaks: ({ core }) =>
      core.drive.facts.power.kind === 'air' &&
      core.figures.supplyShare * core.drive.facts.power.ratedPressure < core.drive.facts.power.lowestPressure,
    sentence: ({ core, site }) =>
      `The site gives ${sayPressure(site.airPressure?.low ?? 0)}; after its hose ${core.drive.number} would get less than the ${sayPressure(core.drive.facts.power.kind === 'air' ? core.drive.facts.power.lowestPressure : 0)} it needs.`,
    examples: () => {
      const air = sampleDrive({ facts: { power: SAMPLE_AIR } });
      return [
        {
          name: 'too little',
          facts: {
            ...lineFacts(),
            core: sampleCore({ drive: air, gear: SAMPLE_GEAR, figures: { supplyShare: ratio(0.5) } }),
          },
          speaks: true,
        },
        {
          name: 'enough',
          facts: { ...lineFacts(), core: sampleCore({ drive: air, figures: { supplyShare: ratio(1) } }) },
          speaks: false,
        },
      ];
    },
  },
];
