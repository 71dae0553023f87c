/*
 * Gases that a list may name as its medium, with the gas group and temperature class that equipment beside them needs.
 * Invariant: a gas that is not in the table has no answer; a class is always colder than the gas ignites at.
 * Not here: how an area is classified, which is the site's own work (hazardous-marking.ts takes it as stated).
 * Read next: hazardous-marking.ts.
 */
import { type Celsius, celsius } from '#lib/units/quantity.ts';
import { TEMPERATURE_CLASSES } from './temperature-classes.ts';

export interface NamedGas {
  readonly name: string;
  readonly gasGroup: 'IIA' | 'IIB' | 'IIC';
  /** Differs between editions by up to 20 °C. */
  readonly ignition: Celsius;
}

/** After IEC 60079-20-1, annex B; from memory, so what stands here is a question to the site and never an answer. */
const GASES: readonly (NamedGas & { readonly words: RegExp })[] = [
  {
    name: 'hydrogen',
    gasGroup: 'IIC',
    ignition: celsius(560),
    words: /\bhydrogen\b(?! (?:sul(?:ph|f)ide|peroxide|chloride|fluoride|cyanide))/i,
  },
  { name: 'acetylene', gasGroup: 'IIC', ignition: celsius(305), words: /\bacetylene\b/i },
  { name: 'carbon disulphide', gasGroup: 'IIC', ignition: celsius(90), words: /\bcarbon disul(?:ph|f)ide\b|\bCS2\b/i },
  { name: 'diethyl ether', gasGroup: 'IIB', ignition: celsius(175), words: /\bdiethyl ether\b/i },
  {
    name: 'ethylene',
    gasGroup: 'IIB',
    ignition: celsius(440),
    words: /\bethylene\b(?! (?:glycol|oxide|dichloride))/i,
  },
  {
    name: 'hydrogen sulphide',
    gasGroup: 'IIB',
    ignition: celsius(260),
    words: /\bhydrogen sul(?:ph|f)ide\b|\bH2S\b/i,
  },
  { name: 'methane', gasGroup: 'IIA', ignition: celsius(600), words: /\bmethane\b/i },
  { name: 'ammonia', gasGroup: 'IIA', ignition: celsius(630), words: /\bammonia\b/i },
  { name: 'petrol vapour', gasGroup: 'IIA', ignition: celsius(280), words: /\b(?:petrol|gasoline)\b/i },
];

/**
 * The first gas of the table that a text names.
 *
 * Formula: table
 *
 * @param medium - What the list says that the valve carries. [–]
 * @returns The gas with its group and ignition temperature, or null when the text names none. [–]
 * @source IEC 60079-20-1, annex B, values from memory.
 * @assumes Text in English, as intake leaves it; mixtures are judged by what is named first in the table, the hardest group.
 * @example namedGas('hydrogen make-up')?.gasGroup // => 'IIC'
 */
export function namedGas(medium: string): NamedGas | null {
  const found = GASES.find(({ words }) => words.test(medium));
  return found === undefined ? null : { name: found.name, gasGroup: found.gasGroup, ignition: found.ignition };
}

/**
 * Easiest temperature class that stays colder than a gas ignites at.
 *
 * Formula: lowest T-number whose highest surface temperature is below the ignition temperature
 *
 * @param ignition - Temperature at which the gas ignites by itself. [°C] range 50…1000
 * @returns Class, or null for a gas that ignites at or below the coldest class. [–]
 * @source IEC 60079-0 and IEC 60079-14, from memory.
 * @assumes No margin beyond the class itself.
 * @example temperatureClassFor(celsius(280)) // => 'T3'
 */
export function temperatureClassFor(ignition: Celsius): string | null {
  return TEMPERATURE_CLASSES.find(([, highest]) => highest < ignition)?.[0] ?? null;
}
