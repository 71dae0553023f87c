/*
 * Rules about what feeds a drive: packs and where they are charged, air at the tool.
 * Invariant: what a drive gets is judged after everything between supply and tool has taken its share.
 * Not here: the place itself (place.ts) and what a crew carries (kits).
 * Read next: method.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import { airTaken } from '#lib/engineering/air-supply.ts';
import { coldShare, packEnergy } from '#lib/engineering/energy.ts';
import type { AirSupply } from '#lib/equipment/drive.ts';
import type { Model } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { celsius, cubicMetresPerSecond, joules, pascals, ratio } from '#lib/units/quantity.ts';
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

/** Free air at the highest pressure that the drive may get: a higher pressure takes more. */
function mostAir(power: AirSupply, site: Site): number {
  const pressure = pascals(Math.min(power.highestPressure, site.airPressure?.high ?? power.ratedPressure));
  const { consumption, ratedPressure } = power;
  return Math.max(consumption, airTaken({ freeAir: consumption, ratedPressure, pressure }));
}

const airOf = (part: Model): AirSupply | null =>
  part.role === 'drive' && part.facts.power.kind === 'air' ? part.facts.power : null;

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
        (site.airFlow !== undefined && site.airFlow.low < mostAir(part.facts.power, site))),
    sentence: ({ part, site }) => {
      const need =
        part.role === 'drive' && part.facts.power.kind === 'air'
          ? `${sayPressure(part.facts.power.lowestPressure)} and ${sayAirFlow(mostAir(part.facts.power, site))} of free air`
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
    id: 'air-regulated',
    topic: 'place',
    title: 'Air above the highest pressure of a drive is regulated down first',
    scope: 'part',
    severity: 'warning',
    source: 'The part’s own rating',
    speaksOf: ['air_pressure', 'drive'],
    speaks: ({ part, site }) =>
      (site.airPressure?.high ?? 0) > (airOf(part)?.highestPressure ?? Number.POSITIVE_INFINITY),
    sentence: ({ part, site }) =>
      `The site gives up to ${sayPressure(site.airPressure?.high ?? 0)}; ${part.name} ${part.number} takes ${sayPressure(airOf(part)?.highestPressure ?? 0)} at most: set and lock the regulator before the hose is joined. Torques here are for that pressure.`,
    examples: () => {
      const at = (pressure: number) => lineFacts({ site: { airPressure: stated('Pa', pressure) } });
      return [
        { name: 'strong supply', facts: { ...at(8e5), part: airDrive() }, speaks: true },
        { name: 'within', facts: { ...at(7e5), part: airDrive() }, speaks: false },
        { name: 'battery', facts: { ...at(8e5), part: sampleDrive() }, speaks: false },
      ];
    },
  },
  {
    id: 'air-shared',
    topic: 'place',
    title: 'Crews that share one supply of air do not run all at once',
    scope: 'part',
    severity: 'warning',
    source: PRACTICE,
    speaksOf: ['air_flow', 'crews', 'drive'],
    speaks: ({ part, site }) => {
      const power = airOf(part);
      return power !== null && site.airFlow !== undefined && site.crews * mostAir(power, site) > site.airFlow.low;
    },
    sentence: ({ part, site }) => {
      const power = airOf(part);
      const each = power === null ? 0 : mostAir(power, site);
      return `The site gives ${sayAirFlow(site.airFlow?.low ?? 0)} and ${part.name} ${part.number} takes up to ${sayAirFlow(each)}: on one compressor ${Math.floor((site.airFlow?.low ?? 0) / each)} of the ${site.crews} crews can run such a drive at a time.`;
    },
    examples: () => {
      const crews = (count: number) =>
        lineFacts({ site: { crews: count, airFlow: stated('m³/s', cubicMetresPerSecond(0.03)) } });
      return [
        { name: 'two crews', facts: { ...crews(2), part: airDrive() }, speaks: true },
        { name: 'one crew', facts: { ...crews(1), part: airDrive() }, speaks: false },
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
