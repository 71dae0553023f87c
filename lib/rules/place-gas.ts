/*
 * A rule that holds the gas a valve carries against the gas group and temperature class of its place.
 * Invariant: it asks and never decides: equipment is judged by what the site states.
 * Not here: equipment against the place (place.ts).
 * Read next: place.ts.
 */
import { namedGas, temperatureClassFor } from '#lib/engineering/gas-classes.ts';
import { demandsOf } from '#lib/engineering/hazardous-marking.ts';
import type { LineFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, said } from './sample-facts.ts';

const GAS_ZONES = ['0', '1', '2'];

interface Disagreement {
  readonly gas: string;
  readonly wanted: string;
}

/** What the named gas needs and the place, as stated, does not ask for. */
function disagreement({ line, place }: LineFacts): Disagreement | null {
  const gas = namedGas(line.process.medium?.value ?? '');
  if (gas === null || !GAS_ZONES.includes(place.zone ?? '')) return null;
  const stated = demandsOf(place);
  const needed = temperatureClassFor(gas.ignition);
  const wanted = [
    ...(stated.gasGroup < gas.gasGroup ? [`group ${gas.gasGroup}`] : []),
    ...(needed !== null && stated.surface_c >= gas.ignition ? [`class ${needed}`] : []),
  ];
  return wanted.length === 0 ? null : { gas: gas.name, wanted: wanted.join(' and ') };
}

const inZone = (medium: string, gasGroup: string, temperatureClass: string): LineFacts =>
  lineFacts({
    line: { process: { medium: said(medium) } },
    place: { zone: said('1'), gasGroup: said(gasGroup), temperatureClass: said(temperatureClass) },
  });

export const PLACE_GAS_RULES: readonly Rule[] = [
  {
    id: 'gas-harder-than-stated',
    topic: 'place',
    title: 'The gas in the valve is no harder than the gas group and temperature class of the place',
    scope: 'line',
    severity: 'warning',
    source: 'IEC 60079-20-1, annex B, and IEC 60079-0, from memory; the site’s own classification decides',
    speaksOf: ['medium', 'zone', 'gas_group', 'temperature_class'],
    speaks: (facts) => disagreement(facts) !== null,
    sentence: (facts) => {
      const found = disagreement(facts);
      return `${facts.line.tag} carries ${found?.gas ?? ''}, which usually needs ${found?.wanted ?? ''}; the place is given as ${facts.place.gasGroup ?? 'no group'} and ${facts.place.temperatureClass ?? 'no class'}. Ask the site before anything is brought there.`;
    },
    examples: () => [
      { name: 'hydrogen in IIA', facts: inZone('hydrogen', 'IIA', 'T1'), speaks: true },
      { name: 'petrol at 300 °C', facts: inZone('petrol', 'IIA', 'T2'), speaks: true },
      { name: 'petrol at 200 °C', facts: inZone('petrol', 'IIA', 'T3'), speaks: false },
      { name: 'hydrogen, nothing stated', facts: inZone('hydrogen', 'not known', 'not known'), speaks: false },
      { name: 'water', facts: inZone('water', 'IIA', 'T1'), speaks: false },
      {
        name: 'no zone',
        facts: lineFacts({ line: { process: { medium: said('hydrogen') } } }),
        speaks: false,
      },
    ],
  },
];
